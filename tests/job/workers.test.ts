import { describe, expect, test } from 'vitest';
import type { Happening } from '@/lib/job';
import { Bay } from './driver';
import { doSteps } from './hands';
import { lidJob } from './lid-procedure';

const why = { text: 'so it is' };

/** The lid is off, the hub is next and its seal is on the screen; one note waits for a foreman. */
const underWay = (): Bay => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid', 'open-hub');
  bay.does({ type: 'deviationNoted', kind: 'anotherWay', step: 'drain', reason: why });
  bay.begin('lamp');
  bay.does({ type: 'readingTaken', step: 'lamp', ask: 'supply', value: 12, unit: 'V' });
  return bay;
};
const entryOf = (bay: Bay): string => bay.state.readings.at(-1)?.id ?? '';
const becomesWorker = (make: Happening | ((bay: Bay) => Happening)): boolean => {
  const bay = underWay();
  const happening = typeof make === 'function' ? make(bay) : make;
  if (happening.type === 'readyGiven') bay.begin(happening.step);
  if (happening.type === 'jobResumed') bay.does({ type: 'jobHeld', reason: why });
  bay.does(happening, 'fay');
  return bay.state.workers.includes('fay');
};

describe('a foreman', () => {
  test.each<readonly [string, Happening | ((bay: Bay) => Happening)]>([
    [
      'takes a reading',
      { type: 'readingTaken', step: 'lamp', ask: 'supply', value: 12, unit: 'V' },
    ],
    ['takes an entry back', (bay) => ({ type: 'entryWithdrawn', entry: entryOf(bay) })],
    ['is ready for one try', { type: 'readyGiven', step: 'press-seal' }],
    ['does a step', { type: 'stepDone', step: 'lamp' }],
    ['leaves a step out', { type: 'stepLeftOut', step: 'run', reason: why }],
    ['reopens a step', { type: 'stepReopened', step: 'open-hub', reason: why }],
    ['lays bolts out', { type: 'fastenersLaid', group: 'lid-bolts', tray: 'C' }],
    [
      'declares kit left over',
      { type: 'kitLeftOver', kitItem: 'cable-tie', count: 1, reason: why },
    ],
    ['notes a deviation', { type: 'deviationNoted', kind: 'anotherWay', step: 'run', reason: why }],
  ])('who %s has worked on the job', (_, happening) => {
    expect(becomesWorker(happening)).toBe(true);
  });

  test('who answers what a step asks has worked on the job', () => {
    const bay = new Bay(lidJob);
    doSteps(bay, 'drain');
    bay.begin('open-lid');
    const answer = { kind: 'count' as const, count: 3 };
    bay.does({ type: 'answerGiven', step: 'open-lid', ask: 'laid', answer }, 'fay');
    expect(bay.state.workers).toContain('fay');
  });

  test.each<readonly [string, Happening | ((bay: Bay) => Happening)]>([
    ['looks at a step', { type: 'stepBegun', step: 'run' }],
    ['holds the job', { type: 'jobHeld', reason: why }],
    ['resumes it', { type: 'jobResumed' }],
    ['calls a foreman', { type: 'foremanCalled' }],
    ['answers the call', { type: 'foremanAnswered' }],
    [
      'decides a deviation',
      (bay) => ({
        type: 'deviationDecided',
        deviation: bay.state.deviations[0]?.id ?? '',
        decision: 'accepted',
        reason: why,
      }),
    ],
    ['signs', { type: 'looseEndSigned', looseEnd: 'partOff:lamp', mark: 'off ', reason: why }],
  ])('who only %s has not', (_, happening) => {
    expect(becomesWorker(happening)).toBe(false);
  });
});

describe('an entry', () => {
  test('replaces only what was entered for the same ask of the same step', () => {
    // Asks are named within their step: two steps may both ask "supply".
    const steps = lidJob.steps.map((one) => {
      const lamp = lidJob.steps.find(({ id }) => id === 'lamp');
      return one.id === 'run' && lamp ? { ...one, asks: lamp.asks } : one;
    });
    const bay = new Bay({ ...lidJob, steps });
    for (const [step, value] of [
      ['lamp', 12],
      ['run', 13],
      ['run', 14],
    ] as const) {
      bay.begin(step);
      bay.does({ type: 'readingTaken', step, ask: 'supply', value, unit: 'V' });
    }
    expect(bay.state.readings.map(({ value, status }) => ({ value, status }))).toEqual([
      { value: 12, status: 'provisional' },
      { value: 13, status: 'superseded' },
      { value: 14, status: 'provisional' },
    ]);
  });
});
