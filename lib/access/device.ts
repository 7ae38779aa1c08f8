import { createHash, randomUUID } from 'node:crypto';
import { z } from 'zod';

/** What a kiosk's browser keeps in a cookie and shows to nobody. */
export const deviceSecretSchema = z.uuid();

export const newDeviceSecret = (): string => randomUUID();

/** The name of a kiosk in events: follows from its secret, and does not give it away. */
export const deviceOf = (secret: string): string => `kiosk-${digestOf('device', secret)}`;

/** The same for a foreman's own screen: another name, so that a session of the one is none of the other. */
export const foremanDeviceOf = (secret: string): string => `foreman-${digestOf('foreman', secret)}`;

const digestOf = (use: string, secret: string): string =>
  createHash('sha256').update(`baycall ${use} ${secret}`).digest('hex').slice(0, 20);
