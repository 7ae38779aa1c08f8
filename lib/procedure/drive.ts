import { z } from 'zod';

/** Square drive of sockets and wrenches in inches, as the trade names it (ISO 1174). */
export const driveSchema = z.enum(['1/4', '3/8', '1/2', '3/4']);
export type Drive = z.infer<typeof driveSchema>;
