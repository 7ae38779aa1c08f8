import type { DeviationKind, Happening, HeardBefore, JobEvent } from '../job';
import type { JobState } from '../job/state';
import type { Adapter } from '../fastening/adapter';
import type { ToleranceInterval } from '../fastening/specification';
import type { Drive } from '../procedure/drive';
import type { Verdict } from '../metrology/verdict';
import type { Role } from '../people';
import type { Unit } from '../quantity';
import type { Intent } from '../voice/intent';
import type { ToolCabinet } from './torque-tool';

/** Which panel is open over the step. */
export type View =
  | 'step'
  | 'parts'
  | 'order'
  | 'bolts'
  | 'caution'
  | 'ledger'
  | 'phrases'
  | 'adapter'
  | 'deviation'
  | 'hold'
  /** Where the job stands, for who takes it over from somebody else. */
  | 'handover';

/** A crowfoot or extension that the mechanic says is on the wrench. */
export interface AdapterInUse {
  /** "Crowfoot 19 mm". */
  readonly name: string;
  readonly adapter: Adapter;
  /** The wrench whose length was taken; absent: the length was typed. */
  readonly tool?: string;
  /** The square that the adapter takes, where it is known. */
  readonly driveIn?: Drive;
}

/** A value that was heard or typed for one ask, and judged, but not yet stored. */
export interface Draft {
  readonly step: string;
  readonly ask: string;
  readonly fastener?: string;
  /** "Cover bolt 3", "Coolant filled". */
  readonly label: string;
  readonly value: number;
  readonly unit: Unit;
  /** What is accepted of the value as it was read: with an adapter, on the wrench. */
  readonly interval: ToleranceInterval | undefined;
  readonly verdict: Verdict;
  /** Why, for the screen. */
  readonly sentence: string;
  readonly tool?: { readonly id: string; readonly expandedUncertainty?: number };
  readonly adapter?: Adapter;
  /** Set when another fastener comes first in the tightening order: what to note once it is confirmed. */
  readonly orderChanged?: string;
  /** Entries that this one replaces. */
  readonly replaces: readonly string[];
}

/** Why a value is asked back before it is stored. */
export type Oddity =
  | { readonly kind: 'unsure'; readonly why: string }
  | { readonly kind: 'implausible' }
  | { readonly kind: 'outOfSpec' }
  | { readonly kind: 'otherUnit' }
  | { readonly kind: 'outOfOrder'; readonly next: string }
  | { readonly kind: 'contradicts'; readonly earlier: string };

/** What a reason is being asked for; the happening is complete but for it. */
export type ReasonFor =
  | { readonly kind: 'leaveOut'; readonly step: string }
  | { readonly kind: 'reopen'; readonly step: string }
  | {
      readonly kind: 'reuse';
      readonly step: string;
      readonly ask: string;
      readonly replaces: readonly string[];
    }
  | { readonly kind: 'deviation'; readonly deviation: DeviationKind; readonly step: string }
  | { readonly kind: 'hold' }
  | { readonly kind: 'leftOver'; readonly kitItem: string; readonly count: number };

/** What the kiosk has asked and waits for. While one is open, values and steps wait. */
export type Question =
  | { readonly kind: 'value'; readonly draft: Draft; readonly oddities: readonly Oddity[] }
  | {
      readonly kind: 'whichValue';
      readonly candidates: readonly number[];
      readonly unit?: Unit;
      readonly label?: string;
    }
  | { readonly kind: 'confirm'; readonly text: string; readonly act: Confirmed }
  | { readonly kind: 'reason'; readonly text: string; readonly reasonFor: ReasonFor };

/** What "yes" does. */
export type Confirmed =
  | { readonly kind: 'happen'; readonly happenings: readonly Happening[]; readonly done: string }
  | { readonly kind: 'askReason'; readonly text: string; readonly reasonFor: ReasonFor };

/** A judged value, shown large. */
export interface Figure {
  readonly value: number;
  readonly unit: Unit;
  readonly label: string;
  readonly verdict: Verdict;
  readonly sentence: string;
}

/** What was last heard or touched, and what became of it. Always on the screen. */
export interface Outcome {
  readonly said?: string;
  readonly tone: 'good' | 'bad' | 'ask' | 'plain';
  readonly text: string;
  /** Set when a value was judged: shown large. */
  readonly figure?: Figure;
}

export interface KioskState {
  readonly job: JobState;
  readonly view: View;
  readonly question?: Question;
  readonly outcome?: Outcome;
  /** The fastener chosen by touch for the next value; else the next one in the tightening order. */
  readonly chosen?: string;
  /** What is on the wrench in this step; forgotten when another step is shown. */
  readonly adapter?: AdapterInUse;
  /** What was said since the last event and made none: for the review of phrases, and for nothing that is done here. */
  readonly hearing?: { readonly heard: readonly HeardBefore[]; readonly asked?: string };
}

/** How an act came in. `certainty` is what the hearing thinks of itself. */
export type Via =
  | { readonly by: 'touch' | 'key' | 'foot' }
  | {
      readonly by: 'voice';
      readonly said: string;
      readonly confidence: number;
      readonly certainty: 'sure' | 'unsure';
      readonly why?: string;
      /** Of what was dictated: the places of the words that were not sure, from 0. */
      readonly unsure?: readonly number[];
    };

export type KioskInput =
  | { readonly kind: 'act'; readonly intent: Intent; readonly via: Via }
  /** Something was said that is no phrase valid now. */
  | { readonly kind: 'notUnderstood'; readonly said: string; readonly why: string }
  /** The words (dictated or typed) that a reason question waits for. */
  | { readonly kind: 'reason'; readonly text?: string; readonly clip?: string; readonly via: Via }
  | { readonly kind: 'choose'; readonly fastener: string }
  | { readonly kind: 'open'; readonly view: View }
  /** A deviation of a chosen kind, by touch; by voice the act `noteDeviation` asks for the usual kind. */
  | { readonly kind: 'deviation'; readonly deviation: DeviationKind }
  | { readonly kind: 'leftOver'; readonly kitItem: string; readonly count: number }
  /** An adapter is on the wrench, or none any more. */
  | { readonly kind: 'adapter'; readonly inUse: AdapterInUse | undefined; readonly via: Via }
  /** The job as the store has it (after a refusal or from another screen). */
  | { readonly kind: 'job'; readonly job: JobState };

/** Effects are data; the screen carries them out. */
export type KioskEffect =
  | { readonly kind: 'store'; readonly event: JobEvent }
  | { readonly kind: 'say'; readonly text: string }
  | { readonly kind: 'tone'; readonly tone: 'good' | 'bad' | 'ask' | 'done' }
  /** Listen with the open vocabulary and keep the sound, then send the input `reason`. */
  | { readonly kind: 'dictate' };

/** What the pure kiosk gets from outside. */
export interface KioskEnv {
  readonly now: string;
  readonly newId: () => string;
  readonly actor: string;
  readonly role: Role;
  readonly device: string;
  /** The shop's torque tools; absent: readings are stored without one, and nothing can be proven. */
  readonly cabinet?: ToolCabinet;
}

export interface KioskStep {
  readonly state: KioskState;
  readonly effects: readonly KioskEffect[];
}
