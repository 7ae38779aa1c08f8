import { describe, expect, test } from 'vitest';
import { applyEvent, type Happening, type JobState } from '@/lib/job';
import { Bay, event } from './driver';
import { doSteps } from './hands';
import { lidJob } from './lid-procedure';

const why = { text: 'so it is' };

/** The same happening, made at another kiosk. */
const at = (device: string, state: JobState, happening: Happening): JobState => {
  const after = applyEvent(state, { ...event(state.seq + 1, happening, 'max'), device });
  if (!after.ok) throw new Error(after.error.message);
  return after.value;
};

const lidOff = (): JobState => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid');
  return bay.state;
};

describe('the kiosk at which a job is in work', () => {
  test('is nowhere before anybody has begun', () => {
    expect(new Bay(lidJob).state.atKiosk).toBeUndefined();
  });

  test('is the one of the last step begun, value taken or step done', () => {
    expect(lidOff().atKiosk).toMatchObject({ device: 'kiosk-1', by: 'mia' });
    const begun = at('kiosk-2', lidOff(), { type: 'stepBegun', step: 'lamp' });
    expect(begun.atKiosk).toEqual({
      device: 'kiosk-2',
      by: 'max',
      at: begun.lastAt,
      seq: begun.seq,
    });
  });

  test('stays where it is while somebody calls, answers or decides from afar', () => {
    const called = at('foreman-1', lidOff(), { type: 'foremanCalled' });
    expect(called.atKiosk).toEqual(lidOff().atKiosk);
  });

  test('is nowhere once the job is on hold: it may go on at any', () => {
    const held = at('kiosk-1', lidOff(), { type: 'jobHeld', reason: why });
    expect(held.atKiosk).toBeUndefined();
    expect(at('kiosk-2', held, { type: 'jobResumed' }).atKiosk).toBeUndefined();
  });
});
