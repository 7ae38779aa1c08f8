import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { acts, kioskTransition, type KioskInput, type KioskState, type Via } from '@/lib/kiosk';
import type { Happening } from '@/lib/job';
import { asksBack } from '@/lib/voice';
import { env, freshKiosk } from './tiny-cover';

const voice = (certainty: 'sure' | 'unsure'): Via => ({
  by: 'voice',
  said: 'words',
  confidence: 1,
  certainty,
});
const ways: readonly Via[] = [
  voice('sure'),
  voice('unsure'),
  { by: 'touch' },
  { by: 'key' },
  { by: 'foot' },
];

const anyInput: fc.Arbitrary<KioskInput> = fc.oneof(
  fc.record({
    kind: fc.constant('act' as const),
    intent: fc.constantFrom(...acts.map(({ intent }) => intent)),
    via: fc.constantFrom(...ways),
  }),
  fc.record({
    kind: fc.constant('act' as const),
    intent: fc.record({
      kind: fc.constant('value' as const),
      value: fc.constantFrom(2, 3.9, 4, 9.5, 10, 12, 40),
    }),
    via: fc.constantFrom(...ways),
  }),
  fc.record({
    kind: fc.constant('act' as const),
    intent: fc.record({
      kind: fc.constant('reopen' as const),
      step: fc.integer({ min: 1, max: 6 }),
    }),
    via: fc.constantFrom(...ways),
  }),
  fc.constant<KioskInput>({ kind: 'reason', text: 'because', via: { by: 'touch' } }),
);
const say = (kind: 'yes' | 'leaveOut' | 'leftOver' | 'takeBack'): KioskInput => ({
  kind: 'act',
  intent: { kind },
  via: voice('sure'),
});
const reopen: KioskInput = { kind: 'act', intent: { kind: 'reopen', step: 1 }, via: voice('sure') };
const because: KioskInput = { kind: 'reason', text: 'because', via: { by: 'touch' } };

/** Single inputs, and whole answers, which chance alone would seldom give. */
const anyInputs = fc
  .array(
    fc.oneof(
      { weight: 6, arbitrary: anyInput.map((input) => [input]) },
      fc.constantFrom(
        [say('leaveOut'), say('yes'), because],
        [say('leftOver'), say('yes'), because],
        [reopen, say('yes'), because],
        [say('takeBack'), say('yes')],
      ),
    ),
    { maxLength: 40 },
  )
  .map((parts) => parts.flat());

const stored = (state: KioskState, input: KioskInput): readonly Happening[] =>
  kioskTransition(state, input, env).effects.flatMap((effect) =>
    effect.kind === 'store' ? [effect.event.happening] : [],
  );

const after = (inputs: readonly KioskInput[]): KioskState =>
  inputs.reduce((state, input) => kioskTransition(state, input, env).state, freshKiosk());

describe('what is hard to undo', () => {
  test('is taking back, leaving out, reopening, declaring left over and closing', () => {
    expect(acts.filter(({ intent }) => asksBack(intent.kind)).map(({ name }) => name)).toEqual([
      'takeBack',
      'leaveOut',
      'reopen',
      'leftOver',
      'close',
    ]);
  });

  test('stores nothing by itself, whatever went before and however it is given', () => {
    const hard = acts.filter(({ intent }) => asksBack(intent.kind));
    fc.assert(
      fc.property(anyInputs, (inputs) => {
        const state = after(inputs);
        for (const { intent } of hard)
          for (const via of ways) expect(stored(state, { kind: 'act', intent, via })).toEqual([]);
      }),
    );
  });

  test('happens only by a yes to a question, or by the reason that one asked for', () => {
    const hard = ['entryWithdrawn', 'jobClosed', 'stepReopened', 'stepLeftOut', 'kitLeftOver'];
    const seen = new Set<string>();
    fc.assert(
      fc.property(anyInputs, (inputs) => {
        inputs.reduce((state, input) => {
          const happened = stored(state, input).filter(({ type }) => hard.includes(type));
          for (const { type } of happened) {
            seen.add(type);
            expect(['confirm', 'value', 'reason']).toContain(state.question?.kind);
            expect(input.kind === 'act' ? input.intent.kind : input.kind).toBe(
              state.question?.kind === 'reason' ? 'reason' : 'yes',
            );
          }
          return kioskTransition(state, input, env).state;
        }, freshKiosk());
      }),
      { numRuns: 300 },
    );
    expect([...seen].sort()).toEqual([
      'entryWithdrawn',
      'kitLeftOver',
      'stepLeftOut',
      'stepReopened',
    ]);
  });

  test('is not done by a yes that was not heard clearly', () => {
    const asked = after([{ kind: 'act', intent: { kind: 'leaveOut' }, via: voice('sure') }]);
    const unsure = kioskTransition(
      asked,
      { kind: 'act', intent: { kind: 'yes' }, via: voice('unsure') },
      env,
    );
    expect(unsure.state.question).toEqual(asked.question);
    expect(unsure.effects.filter(({ kind }) => kind === 'store')).toEqual([]);
  });

  test('nor is a signature or a decision, which nobody can give by voice, key or foot', () => {
    fc.assert(
      fc.property(anyInputs, (inputs) => {
        inputs.reduce((state, input) => {
          for (const { type } of stored(state, input))
            expect(['looseEndSigned', 'deviationDecided', 'jobReassigned']).not.toContain(type);
          return kioskTransition(state, input, env).state;
        }, freshKiosk());
      }),
    );
  });
});
