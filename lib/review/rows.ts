import { z } from 'zod';
import type { Deviation, DeviationKind } from '../job';
import { deviationKindSchema } from '../job/event';
import { verdicts, type Verdict } from '../metrology';
import type { Role } from '../people';
import { unitSchema } from '../quantity';
import type { ValueLimits } from './limits';
import type { Followed } from './sections';

/**
 * What a review is made of: rows that follow from the events of a job, and are written with them. Who is named by id;
 * times are ms since 1970 (UTC); values in the canonical unit of their quantity.
 */

interface Common {
  readonly job: string;
  readonly seq: number;
  readonly atMs: number;
  readonly bay: string;
  readonly procedure: string;
  readonly revision: number;
  readonly actor: string;
  readonly role: Role;
}

interface AtStep extends Common {
  readonly step: string;
}

/** A reason or an utterance as the record has it. */
export const wordsSchema = z.object({
  text: z.string().optional(),
  clip: z.string().optional(),
  spoken: z.boolean(),
  confidence: z.number().optional(),
  unsure: z.array(z.number()).readonly().optional(),
});
export type Words = z.infer<typeof wordsSchema>;

const limitsSchema = z.object({
  lower: z.number().optional(),
  upper: z.number().optional(),
  target: z.number().optional(),
});

/** A job, once it was opened. */
export type JobRow = Common;

/** A reading, once it has counted; it stays when its step is opened again. */
export interface ReadingRow extends AtStep, ValueLimits {
  readonly ask: string;
  /** '' where one value is asked. */
  readonly fastener: string;
  readonly value: number;
  readonly verdict: Verdict;
  readonly tool?: string;
}

/** The first time that a step was done, and how long it took. Later ones are part of a rework. */
export interface StepRow extends AtStep {
  readonly minutes: number;
}

const measuredSchema = limitsSchema.extend({
  /** In the unit of the sheet, as the limits are here. */
  value: z.number(),
  unit: unitSchema,
  verdict: z.enum(verdicts),
  heard: wordsSchema.optional(),
});

/** What stands beside a deviation; names are ids. */
export const deviationFactsSchema = z.object({
  part: z.string().optional(),
  tool: z.string().optional(),
  measured: measuredSchema.optional(),
  why: wordsSchema.optional(),
});

export interface DeviationWrite extends AtStep {
  readonly id: string;
  readonly kind: DeviationKind;
  readonly fastener?: string;
  /** Of the reading that it is about. */
  readonly ask?: string;
  readonly facts: Readonly<z.infer<typeof deviationFactsSchema>>;
}

/** A foreman's word on a deviation. */
export const decidedSchema = z.object({ by: z.string(), why: wordsSchema });

export const reworkFactsSchema = z.object({
  why: wordsSchema,
  sentBack: deviationKindSchema.optional(),
  /** How many steps it opened again, itself included. */
  steps: z.number(),
});

export interface ReworkRow extends AtStep {
  readonly facts: Readonly<z.infer<typeof reworkFactsSchema>>;
  /** Time that the step had taken by then. */
  readonly spentBeforeMs: number;
}

export interface HoldWrite extends AtStep {
  /** As given, at most 80 letters; '' for sound alone. */
  readonly reason: string;
  readonly why: Words;
}

/** Where and in which half hour something was heard. */
export interface HearingKey {
  readonly halfHourMs: number;
  readonly bay: string;
  readonly procedure: string;
  readonly revision: number;
  readonly role: Role;
  readonly phrase: string;
}

export interface HearingCounts {
  readonly heard: number;
  readonly askedBack: number;
  readonly declined: number;
  readonly takenBack: number;
  readonly saidAgain: number;
}

/** One thing to write; all of one event are written with it, or none. */
export type ReviewWrite =
  | { readonly kind: 'job'; readonly row: JobRow }
  | { readonly kind: 'reading'; readonly row: ReadingRow }
  | { readonly kind: 'step'; readonly row: StepRow }
  | { readonly kind: 'deviation'; readonly row: DeviationWrite }
  | {
      readonly kind: 'decided';
      readonly job: string;
      readonly id: string;
      readonly word: NonNullable<Deviation['decision']>['word'];
      readonly decided: Readonly<z.infer<typeof decidedSchema>>;
    }
  | { readonly kind: 'rework'; readonly row: ReworkRow }
  /** What became of the last rework of a step that stood at `from`. */
  | {
      readonly kind: 'followed';
      readonly job: string;
      readonly step: string;
      readonly from: Followed;
      readonly to: Followed;
      readonly spentMs: number;
    }
  | { readonly kind: 'hold'; readonly row: HoldWrite }
  | { readonly kind: 'resumed'; readonly job: string; readonly atMs: number }
  | { readonly kind: 'hearing'; readonly key: HearingKey; readonly add: HearingCounts };

/** Another number has all rows made anew from the events; change it when `projectEvent` changes. */
export const reviewVersion = 1;
