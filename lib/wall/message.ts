import { z } from 'zod';
import { instantSchema } from '../job/event';
import { idSchema } from '../procedure/id';
import { bayCardSchema } from './card';

/**
 * Where a wall stands in the stream: the run of the server, and how far it got in it. Sent as the id of each message;
 * a wall that was cut off names it and gets only what changed since.
 */
export const positionSchema = z
  .string()
  .max(60)
  .regex(/^[a-z0-9]+-\d+$/);

export interface Position {
  readonly run: string;
  readonly version: number;
}

export const positionText = ({ run, version }: Position): string => `${run}-${version}`;

/** The position that a text names; nothing where it names none. */
export const parsePosition = (text: string | null | undefined): Position | undefined => {
  const parsed = positionSchema.safeParse(text);
  if (!parsed.success) return undefined;
  const dash = parsed.data.lastIndexOf('-');
  const version = Number(parsed.data.slice(dash + 1));
  return Number.isSafeInteger(version) ? { run: parsed.data.slice(0, dash), version } : undefined;
};

/**
 * whole: the shop as it is, in place of all that was known. some: the bays that changed. beat: nothing changed, the
 * stream lives. `now` is the server's clock.
 */
export const wallMessageSchema = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('whole'),
    now: instantSchema,
    shop: z.string(),
    /** All bays, in the shop's order. */
    order: z.array(idSchema),
    bays: z.array(bayCardSchema),
  }),
  z.object({ kind: z.literal('some'), now: instantSchema, bays: z.array(bayCardSchema) }),
  z.object({ kind: z.literal('beat'), now: instantSchema }),
]);
export type WallMessage = z.infer<typeof wallMessageSchema>;

/** The server says that it lives this often when nothing changes. */
export const beatEveryMs = 5_000;
