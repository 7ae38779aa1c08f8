import { createHash, randomUUID } from 'node:crypto';
import { z } from 'zod';

/** What a kiosk's browser keeps in a cookie and shows to nobody. */
export const deviceSecretSchema = z.uuid();

export const newDeviceSecret = (): string => randomUUID();

/** The name of a kiosk in events: follows from its secret, and does not give it away. */
export const deviceOf = (secret: string): string =>
  `kiosk-${createHash('sha256').update(`baycall device ${secret}`).digest('hex').slice(0, 20)}`;
