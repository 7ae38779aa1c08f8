import { z } from 'zod';
import { adapterSchema } from '../fastening/adapter';
import { roleSchema } from '../people';
import { idSchema } from '../procedure/id';
import { unitSchema } from '../quantity';
import { vehicleSchema } from '../shop';

/** Stored format 1. Every field is described here or says itself what it is; see DEVELOPERS.md before changing any. */

export const eventIdSchema = z.uuid();
/** RFC 3339 with offset. The order of events is their `seq`; the time is for people and may jump. */
export const instantSchema = z.iso.datetime({ offset: true });

const reasonText = z.string().trim().min(1).max(2000);

/** Why, in the mechanic's words: typed, or as dictated (with the sound, since dictation mishears), or both. */
export const reasonSchema = z
  .object({ text: reasonText.optional(), clip: z.uuid().optional() })
  .refine((reason) => reason.text !== undefined || reason.clip !== undefined, {
    message: 'a reason needs words or a sound clip',
  });
export type Reason = z.infer<typeof reasonSchema>;

/** How it came in, and for voice what was heard. */
export const inputSchema = z.discriminatedUnion('by', [
  z.object({
    by: z.literal('voice'),
    said: z.string().max(400),
    /** Lowest word confidence, 0–1. */
    confidence: z.number().min(0).max(1),
    /** The mechanic was asked back and said yes. */
    askedBack: z.boolean(),
    /** Of what was dictated: which words of `said` the recogniser was not sure of, counted from 0. */
    unsure: z.array(z.number().int().nonnegative()).max(400).optional(),
  }),
  z.object({ by: z.literal('touch') }),
  z.object({ by: z.literal('key') }),
  z.object({ by: z.literal('foot') }),
  z.object({ by: z.literal('shop') }),
]);
export type Input = z.infer<typeof inputSchema>;

/**
 * Something that was said and made no event of its own, and what became of it. acted: done, nothing to store, or more
 * was asked first. confirmed, declined: asked back, and the answer was yes, or no. saidAgain: not sure enough to act
 * on. notThen: not to be said just then. notUnderstood: no phrase.
 */
export const heardBeforeSchema = z.object({
  said: z.string().max(400),
  became: z.enum(['acted', 'confirmed', 'declined', 'saidAgain', 'notThen', 'notUnderstood']),
});
export type HeardBefore = z.infer<typeof heardBeforeSchema>;

export const deviationKindSchema = z.enum([
  'orderChanged',
  'anotherWay',
  'outOfSpec',
  'missingOrDamaged',
  'reusedAgainstSheet',
  'leftOut',
  'rework',
]);
export type DeviationKind = z.infer<typeof deviationKindSchema>;

/** What happened. Each entry that can be taken back (`reading`, `answer`) is named by the id of its event. */
export const happeningSchema = z.discriminatedUnion('type', [
  z.object({
    type: z.literal('jobOpened'),
    procedure: idSchema,
    revision: z.number().int().positive(),
    vehicle: vehicleSchema,
    bay: idSchema,
  }),
  /** The step now on the screen. Its time runs until another is begun, or the job is held or closed. */
  z.object({ type: z.literal('stepBegun'), step: idSchema }),
  /** Spoken "ready" before a step that cannot be undone. */
  z.object({ type: z.literal('readyGiven'), step: idSchema }),
  z.object({
    type: z.literal('readingTaken'),
    step: idSchema,
    ask: idSchema,
    /** Absent: the reading stands for every fastener of the ask, or the ask has none. */
    fastener: idSchema.optional(),
    /** As spoken or typed; converted only when judged. */
    value: z.number(),
    unit: unitSchema,
    /** The tool and its expanded uncertainty (k = 2, in the quantity's canonical unit) at that moment. */
    tool: z
      .object({ id: idSchema, expandedUncertainty: z.number().nonnegative().optional() })
      .optional(),
    /** The wrench had an adapter on it: value and uncertainty are the wrench's, judged is what the fastener got. */
    adapter: adapterSchema.optional(),
  }),
  z.object({
    type: z.literal('answerGiven'),
    step: idSchema,
    ask: idSchema,
    answer: z.discriminatedUnion('kind', [
      z.object({ kind: z.literal('count'), count: z.number().int().nonnegative() }),
      z.object({
        kind: z.literal('choice'),
        option: z.enum(['reused', 'replaced']),
        reason: reasonSchema.optional(),
      }),
      z.object({ kind: z.literal('check'), passed: z.boolean() }),
    ]),
  }),
  /** "Take that back": the named reading or answer no longer counts. The event it names stays. */
  z.object({ type: z.literal('entryWithdrawn'), entry: eventIdSchema }),
  z.object({ type: z.literal('stepDone'), step: idSchema }),
  z.object({ type: z.literal('stepLeftOut'), step: idSchema, reason: reasonSchema }),
  /** Rework: the step and everything done on top of it is open again. */
  z.object({ type: z.literal('stepReopened'), step: idSchema, reason: reasonSchema }),
  /** Fasteners lie elsewhere than the step's tray says. */
  z.object({ type: z.literal('fastenersLaid'), group: idSchema, tray: z.string().min(1).max(40) }),
  /** Kit items not needed, and why. */
  z.object({
    type: z.literal('kitLeftOver'),
    kitItem: idSchema,
    count: z.number().int().positive(),
    reason: reasonSchema,
  }),
  z.object({
    type: z.literal('deviationNoted'),
    kind: deviationKindSchema,
    step: idSchema,
    reason: reasonSchema,
    part: idSchema.optional(),
    fastener: idSchema.optional(),
  }),
  /** A foreman's word on a deviation. `rework` also needs a `stepReopened`. */
  z.object({
    type: z.literal('deviationDecided'),
    deviation: z.string().min(1),
    decision: z.enum(['accepted', 'acceptedRecheckDue', 'rework']),
    reason: reasonSchema,
  }),
  /** A foreman takes responsibility for one loose end as it stands (its `mark` changes when it does). */
  z.object({
    type: z.literal('looseEndSigned'),
    looseEnd: z.string().min(1),
    mark: z.string().min(1),
    reason: reasonSchema,
  }),
  z.object({ type: z.literal('jobHeld'), reason: reasonSchema }),
  z.object({ type: z.literal('jobResumed') }),
  z.object({ type: z.literal('foremanCalled') }),
  z.object({ type: z.literal('foremanAnswered') }),
  /** A foreman moves the job to another bay, or gives it to another mechanic, or both. `bay` is where it is then. */
  z.object({
    type: z.literal('jobReassigned'),
    bay: idSchema,
    mechanic: idSchema.optional(),
    reason: reasonSchema,
  }),
  z.object({ type: z.literal('jobClosed') }),
]);
export type Happening = z.infer<typeof happeningSchema>;
export type HappeningType = Happening['type'];

/** One line of a job's append-only record. */
export const jobEventSchema = z.object({
  format: z.literal(1),
  id: eventIdSchema,
  job: z.uuid(),
  /** 1 for `jobOpened`, then without gaps. */
  seq: z.number().int().positive(),
  at: instantSchema,
  actor: idSchema,
  /** The actor's role when it happened; the store checks it against the shop's people. */
  role: roleSchema,
  device: z.string().min(1).max(64),
  input: inputSchema,
  /** What was heard since the event before that this kiosk made; only the last few. */
  heardBefore: z.array(heardBeforeSchema).max(40).optional(),
  happening: happeningSchema,
});
export type JobEvent = z.infer<typeof jobEventSchema>;
