import type { Adapter } from '../fastening/adapter';
import type { Verdict } from '../metrology/verdict';
import type { Revision, Step, ValueAsk } from '../procedure';
import type { Vehicle } from '../shop';
import type { DeviationKind, Input, JobEvent, Happening, Reason } from './event';

/**
 * provisional: heard and shown; counts once the step is done.
 * counted: the step was done with it. withdrawn: taken back. superseded: replaced, or its step was reopened.
 */
export type EntryStatus = 'provisional' | 'counted' | 'withdrawn' | 'superseded';

export interface Reading {
  readonly id: string;
  /** Of the event that made it. */
  readonly seq: number;
  readonly step: string;
  readonly ask: string;
  readonly fastener?: string;
  readonly value: number;
  readonly unit: Extract<Happening, { type: 'readingTaken' }>['unit'];
  /** In the canonical unit of its quantity; with an adapter, what the fastener got. */
  readonly canonical: number;
  readonly verdict: Verdict;
  readonly tool?: { readonly id: string; readonly expandedUncertainty?: number | undefined };
  /** What was on the wrench; absent: it sat on the fastener itself. */
  readonly adapter?: Adapter;
  readonly status: EntryStatus;
  readonly at: string;
  readonly actor: string;
  readonly input: Input;
}

export interface Answer {
  readonly id: string;
  readonly seq: number;
  readonly step: string;
  readonly ask: string;
  readonly answer: Extract<Happening, { type: 'answerGiven' }>['answer'];
  readonly status: EntryStatus;
  readonly at: string;
  readonly actor: string;
}

export interface StepState {
  readonly status: 'open' | 'done' | 'leftOut';
  readonly ready: boolean;
  /** Time on the screen so far, without holds; while it is the current step, since `JobState.clockSince` more. */
  readonly spentMs: number;
  /** How often it was reopened. */
  readonly reopened: number;
  /** Sequence number of the event since which it is, or last was, open. */
  readonly openedSeq: number;
  /** Sequence number of the event that made it done or left out; absent while it is open. */
  readonly settledSeq?: number;
  readonly doneAt?: string;
  readonly doneBy?: string;
}

export interface PartState {
  readonly where: 'on' | 'off';
  readonly tray?: string;
  readonly fitted?: 'new' | 'reused';
  /** A new one is due when it goes back on. */
  readonly replacementDue: boolean;
}

/** From in place as the vehicle came, over off and run in by hand, to its final state. */
export type FastenerStage =
  'untouched' | 'loose' | 'off' | 'runIn' | 'snug' | 'intermediate' | 'final';

export interface FastenerState {
  readonly stage: FastenerStage;
  /** Where it lies while it is off: tray and the place named like its hole. */
  readonly lies?: { readonly tray: string; readonly place: string };
  readonly threadLockerDue: boolean;
  readonly replacementDue: boolean;
}

export interface FluidState {
  readonly state: 'in' | 'out' | 'refilled';
  /** Sums of the counted volumes, litres; absent where none counts. */
  readonly drainedL?: number;
  readonly spilledL?: number;
  readonly returnedL?: number;
  /** All that went in but what was returned. */
  readonly filledL?: number;
}

/** `used + leftOver` never exceeds what the kit holds. */
export interface KitState {
  readonly used: number;
  readonly leftOver: number;
  /** Further pieces from outside the kit: what was fitted is spent once its step is reopened. */
  readonly extra: number;
}

export interface Deviation {
  /** The id of the event that noted it; behind its kind, the id of the reading or answer that it is about. */
  readonly id: string;
  readonly seq: number;
  readonly kind: DeviationKind;
  readonly step: string;
  readonly reason?: Reason;
  readonly part?: string;
  readonly fastener?: string;
  readonly reading?: string;
  readonly by: string;
  readonly at: string;
  readonly decision?: {
    readonly word: 'accepted' | 'acceptedRecheckDue' | 'rework';
    readonly by: string;
    readonly reason: Reason;
    readonly seq: number;
  };
}

/** In force: the loose end is as it was when signed. One that lapsed is in the record only, and never comes back. */
export interface Signature {
  readonly looseEnd: string;
  readonly mark: string;
  readonly by: string;
  readonly reason: Reason;
}

/** Everything that is known of one job; built by `applyEvent` alone, shown everywhere. */
export interface JobState {
  readonly job: string;
  readonly revision: Revision;
  readonly phase: 'running' | 'held' | 'closed';
  readonly seq: number;
  readonly vehicle: Vehicle;
  readonly bay: string;
  readonly openedAt: string;
  readonly openedBy: string;
  readonly lastAt: string;
  readonly currentStep: string;
  /** Since when the current step's time runs; absent while held or closed. */
  readonly clockSince?: string;
  readonly steps: Readonly<Record<string, StepState>>;
  readonly parts: Readonly<Record<string, PartState>>;
  readonly fasteners: Readonly<Record<string, FastenerState>>;
  readonly fluids: Readonly<Record<string, FluidState>>;
  readonly kit: Readonly<Record<string, KitState>>;
  readonly readings: readonly Reading[];
  readonly answers: readonly Answer[];
  readonly deviations: readonly Deviation[];
  readonly signatures: readonly Signature[];
  readonly hold?: { readonly reason: Reason; readonly since: string; readonly by: string };
  readonly foremanCalledAt?: string;
  /** Who answered the last call; gone once another is made. */
  readonly foremanAnswered?: { readonly by: string; readonly at: string };
  /** Whom a foreman gave the job to, and with which event. */
  readonly assigned?: { readonly mechanic: string; readonly seq: number };
  /** The kiosk at which it was last worked on; gone once it is held, moved or closed, for then it may go on anywhere. */
  readonly atKiosk?: {
    readonly device: string;
    readonly by: string;
    readonly at: string;
    readonly seq: number;
  };
  /** Everyone who did work on it: none of them may sign for it. */
  readonly workers: readonly string[];
  readonly closedAt?: string;
  readonly closedBy?: string;
}

/** Why an event was refused. It changed nothing. `message` says what to do, in plain words. */
export interface Refusal {
  readonly code:
    | 'notOpened'
    | 'alreadyOpened'
    | 'wrongJob'
    | 'wrongRevision'
    | 'sequence'
    | 'closed'
    | 'held'
    | 'notHeld'
    | 'unknownStep'
    | 'unknownAsk'
    | 'unknownFastener'
    | 'unknownPart'
    | 'unknownKitItem'
    | 'unknownGroup'
    | 'unknownEntry'
    | 'unknownDeviation'
    | 'unknownLooseEnd'
    | 'entryNotOpen'
    | 'wrongQuantity'
    | 'wrongAnswer'
    | 'stepNotOpen'
    | 'stepNotDone'
    | 'stepNotCurrent'
    | 'prerequisiteOpen'
    | 'notReady'
    | 'askOpen'
    | 'reasonNeeded'
    | 'alreadyDecided'
    | 'ownWork'
    | 'notForeman'
    | 'looseEndsOpen'
    | 'looseEndChanged'
    | 'kitExceeded'
    | 'nothingChanged';
  readonly message: string;
}

export type { JobEvent, Revision, Step, ValueAsk };
