import type { Quantity, Unit } from '../quantity';
import type { CallWord } from './call-word';
import type { PersonalVoice } from './personal-voice';

/** One recognised word; times in seconds of audio since listening began. */
export interface Word {
  readonly text: string;
  /** 0–1, as the recogniser gives it; it does not reject by itself. */
  readonly confidence: number;
  readonly startS: number;
  readonly endS: number;
}

/** One utterance as the recogniser ended it. */
export interface Heard {
  readonly words: readonly Word[];
  /** The words joined by spaces, as recognised. */
  readonly text: string;
  /** Measures of the sound around it, where known: level of speech over the background, dB. */
  readonly speechOverNoiseDb?: number;
  /** … and of its softest word over the loud part of what was there just before, dB. */
  readonly speechOverLoudNoiseDb?: number;
}

export const holdReasons = ['parts', 'tool', 'foreman', 'approval', 'break'] as const;
export type HoldReason = (typeof holdReasons)[number];

/** What can be meant, by voice as by key or touch. */
export type Intent =
  | { readonly kind: 'next' }
  | { readonly kind: 'back' }
  | { readonly kind: 'repeat' }
  | {
      readonly kind: 'show';
      readonly what:
        'step' | 'parts' | 'order' | 'bolts' | 'caution' | 'ledger' | 'phrases' | 'adapter';
    }
  | {
      readonly kind: 'value';
      readonly value: number;
      /** Only when said. */
      readonly unit?: Unit;
      /** "bolt three torqued ten": the label said. */
      readonly label?: string;
    }
  /** The words fit several numbers: ask which. */
  | {
      readonly kind: 'ambiguousValue';
      readonly candidates: readonly number[];
      readonly unit?: Unit;
      readonly label?: string;
    }
  | { readonly kind: 'takeBack' }
  | { readonly kind: 'yes' }
  | { readonly kind: 'no' }
  | { readonly kind: 'choice'; readonly option: 'reused' | 'replaced' }
  | { readonly kind: 'check'; readonly passed: boolean }
  | { readonly kind: 'leftOver' }
  | { readonly kind: 'noteDeviation' }
  | { readonly kind: 'leaveOut' }
  | { readonly kind: 'reopen'; readonly step?: number }
  | { readonly kind: 'goTo'; readonly step: number }
  | { readonly kind: 'hold'; readonly reason?: HoldReason }
  | { readonly kind: 'resume' }
  | { readonly kind: 'callForeman' }
  | { readonly kind: 'ready' }
  | { readonly kind: 'closeJob' };
export type IntentKind = Intent['kind'];

/** What may be said now; the grammar is built from it. It never holds the expected value. */
export interface VoiceContext {
  readonly intents: readonly IntentKind[];
  /** "bolt", "nut" …, when single fasteners may be named. */
  readonly noun?: string;
  /** What is measured now; only decides how "two fifty" and bare "degrees" are meant. */
  readonly quantity?: Quantity;
  readonly labels: readonly string[];
  /** How many steps may be named by "go to step n". */
  readonly steps: number;
  /** Of whoever is signed on. */
  readonly voice?: PersonalVoice;
  /** A phrase acts only behind this word. */
  readonly callWord?: CallWord;
}

/** What became of an utterance. */
export type Understanding =
  /** `unsure`: ask back before acting, and say why. */
  | {
      readonly kind: 'intent';
      readonly intent: Intent;
      readonly certainty: 'sure' | 'unsure';
      readonly why?: string;
      readonly said: string;
      readonly confidence: number;
    }
  | { readonly kind: 'nothing'; readonly why: string; readonly said: string };
