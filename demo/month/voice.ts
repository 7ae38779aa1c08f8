import { phraseTable, spokenForms, type Intent } from '@/lib/voice';
import type { Via } from '@/lib/kiosk';
import type { Chance } from './chance';

const firstAnd = <T>(all: readonly T[]): readonly [T, ...T[]] | undefined => {
  const [first, ...rest] = all;
  return first === undefined ? undefined : [first, ...rest];
};

const spoken = (value: number, dice: Chance): string => {
  const forms = firstAnd(spokenForms(value).filter((form) => form.split(' ').length < 9));
  return forms === undefined ? String(value) : dice.pick(forms);
};

const sameIntent = (a: Intent, b: Intent): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Some phrase of the table that means it, most often the one that the screen names. */
export const wordsFor = (intent: Intent, dice: Chance, noun = 'bolt'): string => {
  switch (intent.kind) {
    case 'value': {
      const figure = spoken(intent.value, dice);
      if (intent.label !== undefined)
        return `${noun} ${spoken(Number(intent.label), dice)} torqued ${figure}`;
      return dice.weighted([
        [`torqued ${figure}`, 5],
        [figure, 3],
        [`measured ${figure}`, 1],
      ]);
    }
    case 'reopen':
      return intent.step === undefined
        ? 'reopen this step'
        : `reopen step ${spoken(intent.step, dice)}`;
    case 'goTo':
      return `go to step ${spoken(intent.step, dice)}`;
    default: {
      const row = phraseTable.find((one) => 'intent' in one && sameIntent(one.intent, intent));
      if (row === undefined) throw new Error(`no phrase means ${intent.kind}`);
      return dice.is(0.75) ? row.say[0] : dice.pick(row.say);
    }
  }
};

/** Phrases that the demo's bay mishears most: short ones, beside the compressor. */
const hard: readonly string[] = ['no', 'yes', 'ready', 'next', 'done'];

/** How one act comes in: mostly by voice, sometimes not heard well. */
export const viaFor = (say: string, dice: Chance): Via => {
  if (dice.is(0.14))
    return {
      by: dice.weighted([
        ['touch', 6],
        ['foot', 3],
        ['key', 1],
      ]),
    };
  const doubtful = dice.is(hard.includes(say) ? 0.09 : say.includes('point') ? 0.06 : 0.025);
  const confidence = doubtful ? dice.between(0.35, 0.7) : 1 - Math.abs(dice.normal(0, 0.05));
  return {
    by: 'voice',
    said: say,
    confidence: Number(Math.min(1, Math.max(0.3, confidence)).toFixed(3)),
    certainty: doubtful ? 'unsure' : 'sure',
    ...(doubtful ? { why: 'heard badly' } : {}),
  };
};
