import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  acts,
  actForKey,
  availableActs,
  kioskTransition,
  primaryAct,
  secondaryAct,
  validIntents,
  voiceContext,
  type KioskInput,
} from '@/lib/kiosk';
import { replay, type JobEvent } from '@/lib/job';
import { Driver } from './driver';
import { env, freshKiosk, openedEvent, tinyCover } from './tiny-cover';

describe('going on', () => {
  test('says what is still wanted instead of leaving a step half told', () => {
    const d = new Driver().next();
    expect(d.text).toBe('Still wanted: Oil drained');
    expect(d.step).toBe('drain');
  });

  test('a step with one try wants "ready" first, and its check after', () => {
    const d = new Driver().value(3.9).next().value(2).next();
    d.say({ kind: 'choice', option: 'replaced' }).say({ kind: 'check', passed: true });
    expect(d.state.outcome?.tone).toBe('bad');
    expect(d.text).toContain('say ready');
    d.ready().say({ kind: 'check', passed: true }).next();
    expect(d.step).toBe('tighten');
  });

  test('back only looks', () => {
    const d = new Driver().value(3.9).next().say({ kind: 'back' });
    expect(d.step).toBe('drain');
    expect(d.state.job.steps['drain']?.status).toBe('done');
    d.next();
    expect(d.step).toBe('open');
  });
});

describe('what is not as the sheet says', () => {
  test('a reused gasket wants a reason', () => {
    const d = new Driver()
      .value(3.9)
      .next()
      .value(2)
      .next()
      .say({ kind: 'choice', option: 'reused' });
    expect(d.state.question?.kind).toBe('reason');
    expect(d.effects).toContainEqual({ kind: 'dictate' });
    d.reason('no spare in the kit');
    expect(d.state.job.answers.at(-1)?.answer).toEqual({
      kind: 'choice',
      option: 'reused',
      reason: { text: 'no spare in the kit' },
    });
  });

  test('a failed check is asked back', () => {
    const d = new Driver().value(3.9).next().value(2).next().say({ kind: 'check', passed: false });
    expect(d.text).toBe('Cover seated: failed?');
  });

  test('a deviation is dictated and kept with its step', () => {
    const d = new Driver().say({ kind: 'noteDeviation' }).reason('drain plug was cross threaded');
    expect(d.state.job.deviations).toMatchObject([
      { kind: 'anotherWay', step: 'drain', reason: { text: 'drain plug was cross threaded' } },
    ]);
  });

  test('silence is not a reason', () => {
    const d = new Driver().say({ kind: 'noteDeviation' }).reason('  ');
    expect(d.state.question?.kind).toBe('reason');
    expect(d.stored).toEqual([]);
  });

  test('leaving out a step asks twice: whether, and why', () => {
    const d = new Driver().say({ kind: 'leaveOut' });
    expect(d.text).toBe('Leave out step 1?');
    d.yes();
    expect(d.state.question?.kind).toBe('reason');
    d.reason('already drained');
    expect(d.state.job.steps['drain']?.status).toBe('leftOut');
    expect(d.step).toBe('open');
  });

  test('rework reopens a step and what lies on top of it', () => {
    const d = new Driver()
      .toTighten()
      .say({ kind: 'reopen', step: 2 })
      .yes()
      .reason('bolt fell into the timing case');
    expect(d.step).toBe('open');
    expect(d.state.job.steps['gasket']?.status).toBe('open');
  });

  test('hold and resume', () => {
    const d = new Driver().say({ kind: 'hold', reason: 'parts' });
    expect(d.state.job.phase).toBe('held');
    d.next();
    expect(d.text).toBe('The job is on hold. Say "resume"');
    d.say({ kind: 'resume' });
    expect(d.state.job.phase).toBe('running');
  });
});

describe('closing', () => {
  const finished = (): Driver =>
    new Driver()
      .toTighten()
      .value(10)
      .value(10)
      .next()
      .value(4)
      .next()
      .say({ kind: 'leftOver' })
      .yes()
      .reason('spare clips');

  test('is refused with the first loose end while one is left', () => {
    const d = new Driver().say({ kind: 'closeJob' });
    expect(d.state.view).toBe('ledger');
    expect(d.text).toMatch(/loose end/);
    expect(d.state.job.phase).toBe('running');
  });

  test('asks back and then closes', () => {
    const d = finished().say({ kind: 'closeJob' });
    expect(d.text).toBe('Close the job?');
    d.yes();
    expect(d.state.job.phase).toBe('closed');
  });
});

describe('acts', () => {
  test('have one key each', () => {
    const keys = acts.flatMap((act) => act.keys);
    expect(new Set(keys).size).toBe(keys.length);
  });

  test('the foot switch does the likeliest thing: next, ready before one try, yes to a question, no when held down', () => {
    const d = new Driver();
    expect(primaryAct(d.state)?.name).toBe('next');
    d.value(3.9).next().value(2).next();
    expect(primaryAct(d.state)?.name).toBe('ready');
    d.say({ kind: 'check', passed: false });
    expect(primaryAct(d.state)?.name).toBe('yes');
    expect(secondaryAct(d.state)?.name).toBe('no');
  });

  test('a key that makes no sense now does nothing', () => {
    expect(actForKey(freshKiosk(), 'y')).toBeUndefined();
  });

  test('every available act is a valid intent, in whatever state a mechanic gets into', () => {
    fc.assert(
      fc.property(anyInputs, (inputs) => {
        const { state } = run(inputs);
        for (const act of availableActs(state))
          expect(validIntents(state)).toContain(act.intent.kind);
      }),
    );
  });
});

describe('whatever is said, in any order', () => {
  test('what is stored replays to what is shown', () => {
    fc.assert(
      fc.property(anyInputs, (inputs) => {
        const { state, events } = run(inputs);
        const replayed = replay(tinyCover, [openedEvent, ...events]);
        expect(replayed).toEqual({ ok: true, value: state.job });
      }),
      { numRuns: 200 },
    );
  });

  test('nothing odd is stored without a yes: an out-of-spec reading was always asked back', () => {
    fc.assert(
      fc.property(anyInputs, (inputs) => {
        for (const event of run(inputs).events) {
          if (event.happening.type !== 'readingTaken') continue;
          const { ask, value } = event.happening;
          const inSpec =
            ask === 'torque'
              ? value >= 9 && value <= 11
              : ask === 'drained'
                ? value >= 3 && value <= 4.2
                : value >= 3.8 && value <= 4.2;
          if (!inSpec) expect(event.input).toMatchObject({ by: 'voice', askedBack: true });
        }
      }),
      { numRuns: 200 },
    );
  });

  test('the grammar never depends on the expected value', () => {
    const context = voiceContext(freshKiosk());
    expect(context.intents).toContain('value');
    expect(JSON.stringify(context)).not.toContain('3.9');
  });
});

const anyInput: fc.Arbitrary<KioskInput> = fc.oneof(
  fc
    .record({
      intent: fc.constantFrom(...acts.map((act) => act.intent)),
      certainty: fc.constantFrom('sure' as const, 'sure' as const, 'unsure' as const),
    })
    .map(({ intent, certainty }): KioskInput => ({
      kind: 'act',
      intent,
      via: { by: 'voice', said: intent.kind, confidence: 0.8, certainty },
    })),
  fc
    .record({
      value: fc.constantFrom(2, 3.9, 4, 9.5, 10, 12, 40),
      label: fc.constantFrom(undefined, '1', '2', '9'),
    })
    .map(({ value, label }): KioskInput => ({
      kind: 'act',
      intent: { kind: 'value', value, ...(label === undefined ? {} : { label }) },
      via: { by: 'voice', said: 'number', confidence: 0.9, certainty: 'sure' },
    })),
  fc.constant<KioskInput>({
    kind: 'reason',
    text: 'because',
    via: { by: 'voice', said: 'because', confidence: 0.9, certainty: 'sure' },
  }),
  fc.integer({ min: 1, max: 6 }).map((step): KioskInput => ({
    kind: 'act',
    intent: { kind: 'reopen', step },
    via: { by: 'touch' },
  })),
);
const anyInputs = fc.array(anyInput, { maxLength: 60 });

const run = (inputs: readonly KioskInput[]) => {
  let state = freshKiosk();
  const events: JobEvent[] = [];
  for (const input of inputs) {
    const step = kioskTransition(state, input, env);
    state = step.state;
    for (const effect of step.effects) if (effect.kind === 'store') events.push(effect.event);
  }
  return { state, events };
};
