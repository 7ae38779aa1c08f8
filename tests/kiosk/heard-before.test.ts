import { expect, test } from 'vitest';
import { kioskTransition, type KioskInput, type KioskState, type Via } from '@/lib/kiosk';
import type { JobEvent } from '@/lib/job';
import type { Intent } from '@/lib/voice';
import { env, freshKiosk } from './tiny-cover';

const sure = (said: string, certainty: 'sure' | 'unsure' = 'sure'): Via => ({
  by: 'voice',
  said,
  confidence: 0.9,
  certainty,
});

/** What is stored while these come in, one after another. */
const storedBy = (...inputs: readonly KioskInput[]): readonly JobEvent[] => {
  let state: KioskState = freshKiosk();
  return inputs.flatMap((input) => {
    const step = kioskTransition(state, input, env);
    state = step.state;
    return step.effects.flatMap((effect) => (effect.kind === 'store' ? [effect.event] : []));
  });
};

const says = (said: string, intent: Intent, certainty?: 'sure' | 'unsure'): KioskInput => ({
  kind: 'act',
  intent,
  via: sure(said, certainty),
});
const value = (said: string, figure: number, certainty?: 'sure' | 'unsure') =>
  says(said, { kind: 'value', value: figure }, certainty);
const yes = says('yes', { kind: 'yes' });
const no = says('no', { kind: 'no' });

test('an event that was heard at once tells of nothing before it', () => {
  const [reading] = storedBy(value('three point nine', 3.9));
  expect(reading?.happening.type).toBe('readingTaken');
  expect(reading).not.toHaveProperty('heardBefore');
});

test('a value that was asked back and confirmed keeps the words that raised the question', () => {
  const [reading] = storedBy(value('three point nine', 3.9, 'unsure'), yes);
  expect(reading?.input).toMatchObject({ said: 'yes', askedBack: true });
  expect(reading?.heardBefore).toEqual([{ said: 'three point nine', became: 'confirmed' }]);
});

test('a value that was asked back and declined is told with the next event', () => {
  const [reading, ...more] = storedBy(
    value('three point five', 3.5, 'unsure'),
    no,
    value('three point nine', 3.9),
  );
  expect(more).toEqual([]);
  expect(reading?.heardBefore).toEqual([
    { said: 'three point five', became: 'declined' },
    { said: 'no', became: 'acted' },
  ]);
});

test('words that fit several numbers, and were said again digit by digit, were said twice', () => {
  const [reading] = storedBy(
    says('three nine', { kind: 'ambiguousValue', candidates: [39, 3.9] }),
    value('three point nine', 3.9),
  );
  expect(reading?.heardBefore?.[0]).toEqual({ said: 'three nine', became: 'saidAgain' });
});

test('what was not sure enough, not to be said then, or no phrase, is told apart from what was done', () => {
  const [reading] = storedBy(
    { kind: 'notUnderstood', said: 'hammer hammer', why: 'no phrase' },
    says('next', { kind: 'next' }, 'unsure'),
    says('yes', { kind: 'yes' }),
    says('show parts', { kind: 'show', what: 'parts' }),
    value('three point nine', 3.9),
  );
  expect(reading?.heardBefore).toEqual([
    { said: 'hammer hammer', became: 'notUnderstood' },
    { said: 'next', became: 'saidAgain' },
    { said: 'yes', became: 'notThen' },
    { said: 'show parts', became: 'acted' },
  ]);
});

test('is told once, and not again with the event after', () => {
  const [first, second] = storedBy(
    says('show parts', { kind: 'show', what: 'parts' }),
    value('three point nine', 3.9),
    says('next', { kind: 'next' }),
  );
  expect(first?.heardBefore).toHaveLength(1);
  expect(second).not.toHaveProperty('heardBefore');
});

test('what was touched is no hearing', () => {
  const [reading] = storedBy(
    { kind: 'act', intent: { kind: 'show', what: 'parts' }, via: { by: 'touch' } },
    { kind: 'act', intent: { kind: 'value', value: 3.9 }, via: { by: 'touch' } },
  );
  expect(reading).not.toHaveProperty('heardBefore');
});

test('only the last forty are kept', () => {
  const noise: KioskInput = { kind: 'notUnderstood', said: 'clank', why: 'no phrase' };
  const [reading] = storedBy(
    ...Array.from({ length: 60 }, () => noise),
    value('three point nine', 3.9),
  );
  expect(reading?.heardBefore).toHaveLength(40);
});
