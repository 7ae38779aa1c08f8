import { z } from 'zod';
import { deviationKindSchema, instantSchema } from '../job/event';
import { looseEndKinds } from '../ledger/loose-end';
import { verdicts } from '../metrology/verdict';
import { idSchema } from '../procedure/id';

/** Why a bay needs a person now, most pressing first. */
export const wantKinds = [
  /** Somebody called the foreman and waits. */
  'foremanCalled',
  /** The job is on hold for the foreman or for an approval. */
  'waitsForForeman',
  /** A reading is out of spec and nobody decided. */
  'outOfSpec',
  /** All steps are settled, and loose ends are left to settle or sign. */
  'signature',
  /** Work goes on at a kiosk that is not heard of. */
  'kioskOffline',
  /** The kiosk runs and hears nobody. */
  'cannotBeHeard',
  /** Another deviation waits for a foreman's word. */
  'decision',
] as const;
export type WantKind = (typeof wantKinds)[number];

const count = z.number().int().nonnegative();

const wantSchema = z.object({ kind: z.enum(wantKinds), since: instantSchema, count });
export type Want = z.infer<typeof wantSchema>;

const reasonSchema = z.object({ text: z.string(), spoken: z.boolean() });

/** One job as the wall shows it. Spans are told by instants, so that whoever shows them needs only a clock. */
export const jobCardSchema = z.object({
  id: z.uuid(),
  seq: count,
  plate: z.string(),
  vehicle: z.string(),
  procedure: z.string(),
  phase: z.enum(['running', 'held', 'closed']),
  step: z.object({ number: count, of: count, settled: count, title: z.string() }),
  mechanic: z.string().optional(),
  /** Time on the job without holds, up to `runningSince` where its clock runs. */
  spentMs: z.number().nonnegative(),
  runningSince: instantSchema.optional(),
  bookMs: z.number().nonnegative(),
  /** Even odds to be done by `typicalAt`, four in five by `safeAt`. Absent while it stands. */
  finish: z
    .object({
      typicalAt: instantSchema,
      safeAt: instantSchema,
      from: z.enum(['history', 'book', 'both', 'nothingLeft']),
    })
    .optional(),
  hold: z.object({ reason: reasonSchema, since: instantSchema, by: z.string() }).optional(),
  /** Loose ends that nobody signed, without the steps that are still to do. */
  ends: z.array(z.object({ kind: z.enum(looseEndKinds), count })),
  lastTorque: z
    .object({
      of: z.string(),
      value: z.string(),
      verdict: z.enum(verdicts),
      at: instantSchema,
    })
    .optional(),
  answered: z.object({ by: z.string(), at: instantSchema }).optional(),
  undecided: z.array(deviationKindSchema),
});
export type JobCard = z.infer<typeof jobCardSchema>;

/** One bay as the wall shows it. */
export const bayCardSchema = z.object({
  bay: z.object({ id: idSchema, name: z.string() }),
  job: jobCardSchema.optional(),
  kiosk: z.object({
    offlineSince: instantSchema.optional(),
    cannotBeHeard: z.string().optional(),
  }),
  /** Most pressing first. */
  wants: z.array(wantSchema),
});
export type BayCard = z.infer<typeof bayCardSchema>;
