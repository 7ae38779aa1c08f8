import type { DeviationKind } from '../job';
import type { Verdict } from '../metrology';
import type { Role } from '../people';
import type { Unit } from '../quantity';
import type { Bay, Shift } from '../shop';
import type { ValueLimits } from './limits';
import type { Capability, IndividualsLimits, ParetoBar, ZoneRule, ZoneSignal } from '../statistics';

/** Who did something: the name where a foreman is signed on, else "Mechanic 2". */
export interface Who {
  readonly label: string;
  readonly role: Role;
}

/** Where and when something happened; `job` and `seq` lead to the job's timeline. */
export interface Place {
  readonly job: string;
  readonly seq: number;
  /** RFC 3339, UTC. */
  readonly at: string;
  readonly bay: Bay;
  readonly procedure: string;
  readonly revision: number;
  /** Of the procedure. */
  readonly title: string;
  readonly step: string;
  /** In the sheet, from 1; 0 where the sheet has no such step. */
  readonly stepNumber: number;
  readonly stepTitle: string;
}

/** Words as they were stored. `sure` is absent where the record does not say how sure each word was. */
export interface Transcript {
  readonly words: readonly { readonly text: string; readonly sure?: boolean }[];
  readonly spoken: boolean;
  /** Of the least sure word, 0–1. */
  readonly confidence?: number;
}

/** Why, in somebody's words, sound, or both. `clip` names a recording that was kept (GET /api/clips/CLIP). */
export interface Why {
  readonly transcript?: Transcript;
  readonly clip?: string;
}

/** A measured value beside what was asked, in the unit of the sheet. */
export interface MeasuredBeside extends ValueLimits {
  readonly value: number;
  readonly unit: Unit;
  readonly verdict: Verdict;
  /** What was heard of it, where it was spoken. */
  readonly transcript?: Transcript;
}

export interface DeviationRow extends Place {
  readonly id: string;
  readonly kind: DeviationKind;
  readonly instruction: string;
  /** Names, not ids. */
  readonly part?: string;
  readonly fastener?: string;
  readonly measured?: MeasuredBeside;
  /** Name of the torque tool. */
  readonly tool?: string;
  readonly by: Who;
  readonly why?: Why;
  readonly decision?: {
    readonly word: 'accepted' | 'acceptedRecheckDue' | 'rework';
    readonly by: Who;
    readonly why: Why;
  };
}

/** Newest first; never more than `mostRows` rows. */
export interface DeviationList {
  readonly total: number;
  readonly undecided: number;
  readonly rows: readonly DeviationRow[];
}

/** A step over all revisions of its procedure. */
export interface StepName {
  readonly procedure: string;
  readonly title: string;
  readonly step: string;
  readonly stepTitle: string;
}

/** Deviations by kind and by step, the most frequent first. */
export interface ParetoSection {
  readonly total: number;
  readonly byKind: readonly (Omit<ParetoBar, 'name'> & { readonly kind: DeviationKind })[];
  readonly byStep: readonly (Omit<ParetoBar, 'name'> & StepName)[];
}

/** What came after a step was reopened. */
export type Followed = 'doneAgain' | 'leftOut' | 'reopenedAgain' | 'stillOpen';

export interface ReworkLink {
  readonly seq: number;
  readonly at: string;
  readonly by: Who;
  readonly why: Why;
  /** What a foreman sent back, where the reopening followed from that. */
  readonly sentBack?: DeviationKind;
  /** How many steps this opened again, itself included. */
  readonly steps: number;
  readonly followed: Followed;
  /** How long the step took again; absent while it is open. */
  readonly minutes?: number;
}

/** One step of one job that was opened again, once or more often. */
export interface ReworkChain extends Place {
  readonly links: readonly ReworkLink[];
}

export interface ReworkSection {
  readonly total: number;
  readonly bySteps: readonly (StepName & {
    readonly times: number;
    readonly jobs: number;
    readonly followed: Readonly<Record<Followed, number>>;
    /** Of those done again. */
    readonly medianMinutes?: number;
  })[];
  /** Newest first. */
  readonly chains: readonly ReworkChain[];
}

/** Something of which values are charted: one fastener, or one value. */
export interface Joint {
  readonly procedure: string;
  readonly ask: string;
  readonly fastener?: string;
  /** "Cover bolt 3", "Coolant filled". */
  readonly name: string;
}

export interface JointPoint {
  readonly job: string;
  readonly seq: number;
  readonly at: string;
  readonly revision: number;
  /** In the unit of the section. */
  readonly value: number;
  /** From the value before it; absent at the first. */
  readonly movingRange?: number;
  readonly verdict: Verdict;
  /** Name of the tool. */
  readonly tool?: string;
  /** The zone rules that this point completes. */
  readonly rules: readonly ZoneRule[];
}

/** Whether the process can keep the limits, or why that cannot be said. */
export type CapabilityAnswer =
  | { readonly kind: 'capable'; readonly points: number; readonly capability: Capability }
  /** Fewer than `needs` values. */
  | { readonly kind: 'tooFew'; readonly points: number; readonly needs: number }
  /** Special causes: what is not stable has no capability. */
  | { readonly kind: 'unstable'; readonly signals: number }
  /** The sheet gives no figure, or the limits were not the same for all values. */
  | { readonly kind: 'noLimits' | 'limitsDiffer' }
  /** All values are the same, so that there is no spread to judge. */
  | { readonly kind: 'noSpread' };

/** The newest values of a joint that counted, in the order of time; at most `mostPoints`. */
export interface JointSection {
  readonly joint: Joint;
  readonly unit: Unit;
  /** Of the newest value. */
  readonly limits?: ValueLimits;
  readonly points: readonly JointPoint[];
  /** Absent below two values. */
  readonly chart?: IndividualsLimits;
  /** `at` counts `points` from 0. */
  readonly signals: readonly ZoneSignal[];
  readonly capability: CapabilityAnswer;
}

/** How long one step took, from the newest runs (at most `mostRuns`), against its book time. */
export interface StepTimes {
  readonly step: string;
  readonly stepNumber: number;
  readonly stepTitle: string;
  readonly bookMinutes: number;
  readonly runs: number;
  /** Minutes; absent where there was no run. */
  readonly quantiles?: {
    readonly p10: number;
    readonly p25: number;
    readonly p50: number;
    readonly p75: number;
    readonly p90: number;
  };
  /** What a lognormal with the same logarithms would have; absent below `enoughForFit` runs. */
  readonly lognormal?: { readonly p50: number; readonly p80: number; readonly p95: number };
  /** Of all runs, 0–1. */
  readonly overBook: number;
  /** How many runs took so many times the book time: of `timeEdges[i]` up to the next edge, the last one open. */
  readonly histogram: readonly number[];
}

export interface StepTimesSection {
  readonly procedure: string;
  readonly title: string;
  /** The steps are those of this one; runs of the others count by the step's id where none is chosen. */
  readonly revision: number;
  readonly steps: readonly StepTimes[];
}

/** How one phrase of the phrase table fared. All counts are of utterances. */
export interface PhraseHearings {
  /** As in the phrase table, "torqued {value}"; '' for what was no phrase at all. */
  readonly phrase: string;
  /** Everything that was taken for it. */
  readonly heard: number;
  /** Stored only after a yes. */
  readonly askedBack: number;
  /** False: asked back, and the answer was no. */
  readonly declined: number;
  /** False: stored, and taken back. */
  readonly takenBack: number;
  /** Repeated: not sure enough to act on, or not to be said just then. */
  readonly saidAgain: number;
  /** Declined, taken back or said again, of all heard, 0–1, with its 95 % interval (Wilson). */
  readonly troubled: { readonly share: number; readonly from: number; readonly to: number };
}

export interface HearingSection {
  readonly heard: number;
  /** The most troubled first (by the lower end of the interval). */
  readonly phrases: readonly PhraseHearings[];
}

export interface HoldReasonRow {
  /** As it was given; reasons in words of their own are under ''. */
  readonly reason: string;
  readonly count: number;
  readonly running: number;
  /** Of those that ended. */
  readonly totalMinutes: number;
  readonly medianMinutes?: number;
  readonly longestMinutes?: number;
}

export interface HoldRow extends Place {
  readonly by: Who;
  readonly why: Why;
  /** Absent while it lasts. */
  readonly minutes?: number;
}

export interface HoldSection {
  readonly total: number;
  /** The longest in all first. */
  readonly byReason: readonly HoldReasonRow[];
  /** Newest first. */
  readonly rows: readonly HoldRow[];
}

/** How much there is, for the head of the page. */
export interface OverviewSection {
  readonly jobs: number;
  readonly deviations: number;
  readonly undecided: number;
  readonly outOfSpec: number;
  readonly reworks: number;
  readonly holds: number;
  /** That counted. */
  readonly readings: number;
  /** False while jobs are still being taken in, as after an update: until then all counts are too low. */
  readonly complete: boolean;
}

/** What can be chosen in the filter. */
export interface ReviewChoices {
  readonly bays: readonly Bay[];
  readonly shifts: readonly Shift[];
  /** IANA name of the zone in which days and shifts are meant. */
  readonly timeZone: string;
  readonly today: string;
  /** Newest revision first. */
  readonly procedures: readonly {
    readonly procedure: string;
    readonly title: string;
    readonly revisions: readonly number[];
    /** Of the newest revision. */
    readonly steps: readonly {
      readonly step: string;
      readonly number: number;
      readonly title: string;
    }[];
    readonly joints: readonly Joint[];
  }[];
}

/** A foreman's decision that the sheet wants changing, for its writer. */
export interface SheetMark {
  readonly id: string;
  readonly procedure: string;
  readonly revision: number;
  readonly title: string;
  /** Absent: of the whole sheet. */
  readonly step?: string;
  readonly stepTitle?: string;
  readonly note: string;
  readonly by: Who;
  readonly at: string;
  /** What showed it. */
  readonly seen?: { readonly job: string; readonly seq: number };
  /** A writer has dealt with it, or a newer revision was published. */
  readonly done?: { readonly by?: Who; readonly at: string; readonly revision?: number };
}

/** Sections never hold more than these. */
export const mostRows = 200;
export const mostPoints = 400;
export const mostRuns = 1000;

/** Below this many values a capability says more of chance than of the joint (common practice, no source). */
export const enoughForCapability = 30;

/** Below this many runs no curve is drawn. */
export const enoughForFit = 20;

/** Times the book time. */
export const timeEdges = [0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 2, 3, 5] as const;
