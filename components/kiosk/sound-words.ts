import type { SoundKind } from '@/lib/sound';
import type { GlyphName } from '../design/glyph';
import type { BayNoise } from '../microphone';

/** The bay's sound beside the meter, in words and a sign. */
export interface SoundView {
  readonly text: string;
  readonly glyph: GlyphName;
  /** Too loud to be heard: stands out. */
  readonly loud: boolean;
  /** Tools have taken most of the time of late: nobody could be heard here. */
  readonly unheard: boolean;
}

/** Short, as they stand beside a meter: a saw is a grinder here, a compressor an engine, a horn an alarm. */
const names: Readonly<Record<SoundKind, string>> = {
  speech: 'Voices',
  impactTool: 'Impact tool',
  grinderOrSaw: 'Grinder',
  engineOrCompressor: 'Engine',
  alarm: 'Alarm',
  musicOrRadio: 'Radio',
  quiet: 'Quiet',
};

const glyphs: Readonly<Record<SoundKind, GlyphName>> = {
  speech: 'speak',
  impactTool: 'hammer',
  grinderOrSaw: 'blade',
  engineOrCompressor: 'engine',
  alarm: 'alert',
  musicOrRadio: 'music',
  quiet: 'silent',
};

/** Undefined while it is not yet known; where no classifier watches, it says so. */
export const soundView = (noise: BayNoise | undefined): SoundView | undefined => {
  if (noise === undefined) return undefined;
  if (noise === 'unwatched')
    return { text: 'Noise unwatched', glyph: 'query', loud: false, unheard: false };
  const { kind, level, unheard } = noise;
  const loud = level === 'loud' && kind !== 'speech' && kind !== 'quiet';
  const much = loud ? ', loud' : level === 'low' && kind !== 'quiet' ? ', low' : '';
  return {
    text: unheard ? 'Too loud here' : `${names[kind]}${much}`,
    glyph: glyphs[kind],
    loud: loud || unheard,
    unheard,
  };
};
