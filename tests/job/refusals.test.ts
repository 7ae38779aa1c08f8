import { describe, expect, test } from 'vitest';
import { applyEvent, openJob, replay, type Happening, type Refusal } from '@/lib/job';
import { looseEnds } from '@/lib/ledger';
import { Bay, event, eventId, frozen, opening, type Actor } from './driver';
import { doSteps } from './hands';
import { hatchJob, lidJob } from './lid-procedure';

const why = { text: 'so it is' };

interface Case {
  readonly code: Refusal['code'];
  readonly when: string;
  readonly first?: (bay: Bay) => void;
  readonly then: Happening | ((bay: Bay) => Happening);
  readonly actor?: Actor;
}

const torque = (rest: object): Happening => ({
  type: 'readingTaken',
  step: 'tighten-lid',
  ask: 'lid-torque',
  fastener: 'lid-1',
  value: 10,
  unit: 'N.m',
  ...rest,
});
const closed = (bay: Bay): void => {
  doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal', 'close-lid', 'snug-lid');
  doSteps(bay, 'tighten-lid', 'close-hub', 'tighten-hub', 'fill', 'lamp', 'run');
  bay.does({ type: 'kitLeftOver', kitItem: 'cable-tie', count: 2, reason: why });
  bay.does({ type: 'jobClosed' });
};
const held = (bay: Bay): void => {
  bay.does({ type: 'jobHeld', reason: { text: 'waiting for parts' } });
};
const atTightening = (bay: Bay): void => {
  doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal', 'close-lid', 'snug-lid');
  bay.begin('tighten-lid');
};
const atSeal = (bay: Bay): void => {
  doSteps(bay, 'drain', 'open-lid', 'open-hub');
  bay.begin('press-seal');
};
const atClosing = (bay: Bay): void => {
  doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal');
  bay.begin('close-lid');
};
const noted = (bay: Bay): string =>
  bay.does({ type: 'deviationNoted', kind: 'anotherWay', step: 'drain', reason: why });
const decide = (deviation: string): Happening => ({
  type: 'deviationDecided',
  deviation,
  decision: 'accepted',
  reason: why,
});
const sign = (looseEnd: string, mark: string): Happening => ({
  type: 'looseEndSigned',
  looseEnd,
  mark,
  reason: why,
});
const choose = (ask: string): Happening => ({
  type: 'answerGiven',
  step: 'close-lid',
  ask,
  answer: { kind: 'choice', option: 'reused' },
});
const passed = (step: string, ask: string): Happening => ({
  type: 'answerGiven',
  step,
  ask,
  answer: { kind: 'check', passed: true },
});

const cases: readonly Case[] = [
  { code: 'alreadyOpened', when: 'the job is opened again', then: opening(lidJob).happening },
  {
    code: 'closed',
    when: 'anything follows the closing',
    first: closed,
    then: { type: 'foremanCalled' },
  },
  { code: 'closed', when: 'it is closed twice', first: closed, then: { type: 'jobClosed' } },
  {
    code: 'held',
    when: 'work goes on during a hold',
    first: held,
    then: { type: 'stepBegun', step: 'lamp' },
  },
  { code: 'held', when: 'it is closed during a hold', first: held, then: { type: 'jobClosed' } },
  { code: 'held', when: 'it is held twice', first: held, then: { type: 'jobHeld', reason: why } },
  { code: 'notHeld', when: 'it is resumed while it runs', then: { type: 'jobResumed' } },
  {
    code: 'unknownStep',
    when: 'a step is begun that is none',
    then: { type: 'stepBegun', step: 'polish' },
  },
  {
    code: 'unknownStep',
    when: 'the step is a name that every object knows',
    then: { type: 'stepDone', step: 'constructor' },
  },
  {
    code: 'unknownStep',
    when: 'ready is given for no step',
    then: { type: 'readyGiven', step: 'polish' },
  },
  { code: 'unknownStep', when: 'a reading is of no step', then: torque({ step: 'polish' }) },
  {
    code: 'unknownStep',
    when: 'no step is left out',
    then: { type: 'stepLeftOut', step: 'polish', reason: why },
  },
  {
    code: 'unknownStep',
    when: 'no step is reopened',
    then: { type: 'stepReopened', step: 'constructor', reason: why },
  },
  {
    code: 'unknownStep',
    when: 'a deviation is noted at no step',
    then: { type: 'deviationNoted', kind: 'anotherWay', step: 'polish', reason: why },
  },
  {
    code: 'unknownAsk',
    when: 'the step asks no such thing',
    first: atTightening,
    then: torque({ ask: 'weight' }),
  },
  {
    code: 'unknownFastener',
    when: 'a reading of each does not say which',
    first: atTightening,
    then: torque({ fastener: undefined }),
  },
  {
    code: 'unknownFastener',
    when: 'it names a fastener of another group',
    first: atTightening,
    then: torque({ fastener: 'hub-1' }),
  },
  {
    code: 'unknownFastener',
    when: 'one value is asked and a bolt is named',
    then: {
      type: 'readingTaken',
      step: 'drain',
      ask: 'drained',
      fastener: 'lid-1',
      value: 3,
      unit: 'L',
    },
  },
  {
    code: 'unknownFastener',
    when: 'a deviation names none that exists',
    then: {
      type: 'deviationNoted',
      kind: 'missingOrDamaged',
      step: 'drain',
      reason: why,
      fastener: 'lid-9',
    },
  },
  {
    code: 'unknownFastener',
    when: 'bolts are laid out that are all in',
    then: { type: 'fastenersLaid', group: 'lid-bolts', tray: 'A' },
  },
  {
    code: 'unknownPart',
    when: 'a deviation names no part',
    then: {
      type: 'deviationNoted',
      kind: 'missingOrDamaged',
      step: 'drain',
      reason: why,
      part: 'roof',
    },
  },
  {
    code: 'unknownKitItem',
    when: 'what is left over is not of the kit',
    then: { type: 'kitLeftOver', kitItem: 'constructor', count: 1, reason: why },
  },
  {
    code: 'unknownGroup',
    when: 'no group is laid out',
    then: { type: 'fastenersLaid', group: 'roof-bolts', tray: 'A' },
  },
  {
    code: 'unknownEntry',
    when: 'nothing is taken back',
    then: { type: 'entryWithdrawn', entry: eventId(1) },
  },
  {
    code: 'entryNotOpen',
    when: 'what counts is taken back',
    first: (bay) => {
      doSteps(bay, 'drain');
    },
    then: (bay) => ({ type: 'entryWithdrawn', entry: bay.state.readings[0]?.id ?? '' }),
  },
  {
    code: 'entryNotOpen',
    when: 'it was taken back already',
    first: (bay) => {
      bay.does({
        type: 'entryWithdrawn',
        entry: bay.does({
          type: 'readingTaken',
          step: 'drain',
          ask: 'drained',
          value: 3,
          unit: 'L',
        }),
      });
    },
    then: (bay) => ({ type: 'entryWithdrawn', entry: bay.state.readings[0]?.id ?? '' }),
  },
  {
    code: 'wrongQuantity',
    when: 'a torque is given in litres',
    first: atTightening,
    then: torque({ unit: 'L' }),
  },
  {
    code: 'wrongAnswer',
    when: 'a number grows beyond numbers',
    first: atTightening,
    then: torque({ value: 1e308, unit: 'kgf.m' }),
  },
  {
    code: 'wrongAnswer',
    when: 'a value answers a count',
    first: (bay) => {
      doSteps(bay, 'drain');
      bay.begin('open-lid');
    },
    then: torque({ step: 'open-lid', ask: 'laid' }),
  },
  {
    code: 'wrongAnswer',
    when: 'a check answers a count',
    first: (bay) => {
      doSteps(bay, 'drain');
      bay.begin('open-lid');
    },
    then: passed('open-lid', 'laid'),
  },
  { code: 'wrongAnswer', when: 'a check answers a value', then: passed('drain', 'drained') },
  {
    code: 'stepNotOpen',
    when: 'a done step is done again',
    first: (bay) => {
      doSteps(bay, 'drain');
    },
    then: { type: 'stepDone', step: 'drain' },
  },
  {
    code: 'stepNotOpen',
    when: 'a done step is left out',
    first: (bay) => {
      doSteps(bay, 'drain');
    },
    then: { type: 'stepLeftOut', step: 'drain', reason: why },
  },
  {
    code: 'stepNotOpen',
    when: 'a reading comes after its step',
    first: (bay) => {
      doSteps(bay, 'drain');
    },
    then: { type: 'readingTaken', step: 'drain', ask: 'drained', value: 3, unit: 'L' },
  },
  {
    code: 'stepNotDone',
    when: 'an open step is reopened',
    then: { type: 'stepReopened', step: 'drain', reason: why },
  },
  {
    code: 'stepNotCurrent',
    when: 'a step is done that is not on the screen',
    first: (bay) => {
      doSteps(bay, 'drain', 'open-lid');
    },
    then: { type: 'stepDone', step: 'open-hub' },
  },
  {
    code: 'stepNotCurrent',
    when: 'a reading is for a step that is not on the screen',
    then: torque({}),
  },
  {
    code: 'stepNotCurrent',
    when: 'ready is given for a step that is not on the screen',
    first: (bay) => {
      doSteps(bay, 'drain', 'open-lid', 'open-hub');
    },
    then: { type: 'readyGiven', step: 'press-seal' },
  },
  {
    code: 'prerequisiteOpen',
    when: 'what comes before is open',
    first: (bay) => {
      bay.begin('open-hub');
    },
    then: { type: 'stepDone', step: 'open-hub' },
  },
  {
    code: 'prerequisiteOpen',
    when: 'ready is given too early',
    first: (bay) => {
      bay.begin('press-seal');
    },
    then: { type: 'readyGiven', step: 'press-seal' },
  },
  {
    code: 'prerequisiteOpen',
    when: 'the changed order was explained for another step only',
    first: (bay) => {
      bay.begin('open-hub');
      bay.does({ type: 'deviationNoted', kind: 'orderChanged', step: 'open-lid', reason: why });
    },
    then: { type: 'stepDone', step: 'open-hub' },
  },
  {
    code: 'notReady',
    when: 'a one-try step is done without ready',
    first: atSeal,
    then: { type: 'stepDone', step: 'press-seal' },
  },
  {
    code: 'notReady',
    when: 'its check comes before ready',
    first: atSeal,
    then: passed('press-seal', 'square'),
  },
  {
    code: 'notReady',
    when: 'ready was given before it was reopened',
    first: (bay) => {
      doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal');
      bay.does({ type: 'stepReopened', step: 'press-seal', reason: why });
    },
    then: { type: 'stepDone', step: 'press-seal' },
  },
  {
    code: 'askOpen',
    when: 'something asked is not answered',
    then: { type: 'stepDone', step: 'drain' },
  },
  {
    code: 'askOpen',
    when: 'one bolt of three has no value',
    first: (bay) => {
      atTightening(bay);
      bay.does(torque({}));
      bay.does(torque({ fastener: 'lid-3' }));
    },
    then: { type: 'stepDone', step: 'tighten-lid' },
  },
  {
    code: 'reasonNeeded',
    when: 'a part is reused where the sheet leaves it open',
    first: atClosing,
    then: choose('which-gasket'),
  },
  {
    code: 'reasonNeeded',
    when: 'a part is reused against the sheet',
    first: atClosing,
    then: choose('which-washer'),
  },
  {
    code: 'kitExceeded',
    when: 'more is left over than there is',
    then: { type: 'kitLeftOver', kitItem: 'cable-tie', count: 5, reason: why },
  },
  {
    code: 'kitExceeded',
    when: 'what is used is left over',
    first: (bay) => {
      doSteps(bay, 'lamp');
    },
    then: { type: 'kitLeftOver', kitItem: 'cable-tie', count: 3, reason: why },
  },
  {
    code: 'unknownDeviation',
    when: 'no deviation is decided',
    then: decide('nothing'),
    actor: 'fred',
  },
  {
    code: 'alreadyDecided',
    when: 'a deviation is decided twice',
    first: (bay) => {
      bay.does(decide(noted(bay)), 'fay');
    },
    then: (bay) => decide(bay.state.deviations[0]?.id ?? ''),
    actor: 'fred',
  },
  {
    code: 'alreadyDecided',
    when: 'a loose end is signed twice',
    first: (bay) => {
      bay.does(sign('partOff:lamp', 'off '), 'fay');
    },
    then: sign('partOff:lamp', 'off '),
    actor: 'fred',
  },
  {
    code: 'notForeman',
    when: 'a mechanic decides',
    then: (bay) => decide(noted(bay)),
    actor: 'max',
  },
  {
    code: 'notForeman',
    when: 'a mechanic signs',
    then: sign('partOff:lamp', 'off '),
    actor: 'max',
  },
  {
    code: 'notForeman',
    when: 'a mechanic answers the call for a foreman',
    first: (bay) => {
      bay.does({ type: 'foremanCalled' });
    },
    then: { type: 'foremanAnswered' },
  },
  {
    code: 'ownWork',
    when: 'a foreman who worked decides',
    first: (bay) => {
      bay.begin('drain');
      bay.does({ type: 'readingTaken', step: 'drain', ask: 'drained', value: 3, unit: 'L' }, 'fay');
    },
    then: (bay) => decide(noted(bay)),
    actor: 'fay',
  },
  {
    code: 'unknownLooseEnd',
    when: 'what is signed is no loose end',
    then: sign('partOff:lid', 'off '),
    actor: 'fred',
  },
  {
    code: 'looseEndChanged',
    when: 'it changed since it was looked at',
    then: sign('partOff:lamp', 'off A'),
    actor: 'fred',
  },
  { code: 'looseEndsOpen', when: 'it is closed with loose ends', then: { type: 'jobClosed' } },
];

describe('an event is refused and changes nothing', () => {
  test.each(cases)('$code: when $when', ({ code, first, then, actor }) => {
    const bay = new Bay(lidJob);
    first?.(bay);
    const happening = typeof then === 'function' ? then(bay) : then;
    const before = structuredClone(bay.state);
    const result = bay.try(happening, actor ?? 'mia');
    expect(result.ok ? 'accepted' : result.error.code).toBe(code);
    // Whole sentences without ids: they go on the screen as they are.
    expect(result.ok ? '' : result.error.message).toMatch(/^[A-Z0-9][^_]{8,}[.]$/);
    expect(bay.state).toEqual(before);
  });

  test('when it is of another job, or out of sequence', () => {
    const { state } = new Bay(lidJob);
    const call = event(2, { type: 'foremanCalled' });
    const code = (one: typeof call) => {
      const after = applyEvent(state, one);
      return after.ok ? 'accepted' : after.error.code;
    };
    expect(code(call)).toBe('accepted');
    expect(code({ ...call, job: '00000000-0000-4000-8000-0000000000bb' })).toBe('wrongJob');
    expect(code({ ...call, seq: 1 })).toBe('sequence');
    expect(code({ ...call, seq: 3 })).toBe('sequence');
  });
});

describe('opening is refused', () => {
  const code = (revision: typeof lidJob, first: typeof openEvent) => {
    const opened = openJob(revision, first);
    return opened.ok ? 'accepted' : opened.error.code;
  };
  const openEvent = frozen(opening(lidJob));

  test('on another revision, with another first event, or late', () => {
    expect(code(lidJob, openEvent)).toBe('accepted');
    expect(code(hatchJob, openEvent)).toBe('wrongRevision');
    expect(code({ ...lidJob, revision: 2 }, openEvent)).toBe('wrongRevision');
    expect(code(lidJob, event(1, { type: 'foremanCalled' }))).toBe('notOpened');
    expect(code(lidJob, { ...openEvent, seq: 2 })).toBe('sequence');
  });

  test('and a replay says at which event it stopped', () => {
    const log = [openEvent, event(2, { type: 'foremanCalled' }), event(3, { type: 'jobResumed' })];
    const after = replay(lidJob, log);
    expect(after.ok ? after.value.seq : after.error).toEqual({
      code: 'notHeld',
      at: 3,
      message: 'The job is not on hold: go on.',
    });
    expect(replay(lidJob, [])).toMatchObject({ ok: false, error: { code: 'notOpened', at: 1 } });
    expect(replay(hatchJob, log)).toMatchObject({ error: { code: 'wrongRevision', at: 1 } });
  });
});

describe('during a hold', () => {
  test('a foreman may decide and sign, a note may be made, an entry taken back', () => {
    const bay = new Bay(lidJob);
    const entry = bay.does({
      type: 'readingTaken',
      step: 'drain',
      ask: 'drained',
      value: 3,
      unit: 'L',
    });
    held(bay);
    const deviation = noted(bay);
    bay.does({ type: 'entryWithdrawn', entry });
    bay.does({ type: 'foremanCalled' });
    expect(bay.state.foremanCalledAt).toBeDefined();
    bay.does({ type: 'foremanAnswered' }, 'fred');
    expect(bay.state.foremanCalledAt).toBeUndefined();
    bay.does(decide(deviation), 'fred');
    const lamp = looseEnds(bay.state).find(({ key }) => key === 'partOff:lamp');
    bay.does(sign('partOff:lamp', lamp?.mark ?? ''), 'fred');
    bay.does({ type: 'jobResumed' });
    expect(bay.state.phase).toBe('running');
    expect(bay.state.hold).toBeUndefined();
    expect(bay.state.workers).toEqual(['mia']);
  });
});
