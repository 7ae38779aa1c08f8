import type { KindTable } from '@/lib/sound';

/** What the server says about the classifier in use. */
export interface SoundModelFacts {
  readonly name: string;
  readonly url: string;
  readonly bytes: number;
  readonly sha256: string;
  readonly kinds: KindTable;
}

export interface Labelled {
  readonly label: string;
  readonly score: number;
}

export type ToSounds =
  | { readonly kind: 'load'; readonly base: string; readonly model: SoundModelFacts }
  | {
      readonly kind: 'window';
      readonly id: number;
      readonly samples: Float32Array<ArrayBuffer>;
      readonly sampleRateHz: number;
    };

export type FromSounds =
  | { readonly kind: 'loaded' }
  | { readonly kind: 'failed'; readonly detail: string }
  | { readonly kind: 'classified'; readonly id: number; readonly labelled: readonly Labelled[] };
