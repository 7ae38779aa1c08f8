import { describe, expect, test } from 'vitest';
import { applyEvent, openJob, spentMs, type Happening, type JobState } from '@/lib/job';
import { event, opening } from './driver';
import { hatchJob } from './lid-procedure';

const at = (time: string): string => `2026-03-02T${time}Z`;
const minutes = (state: JobState, step: string, now: string): number =>
  spentMs(state, step, at(now)) / 60_000;

/** The state after what happened at those times; the job opens at 08:00. */
const after = (...happened: readonly (readonly [string, Happening])[]): JobState => {
  const opened = openJob(hatchJob, { ...opening(hatchJob), at: at('08:00:00') });
  if (!opened.ok) throw new Error(opened.error.message);
  return happened.reduce((state, [time, happening]) => {
    const next = applyEvent(state, { ...event(state.seq + 1, happening), at: at(time) });
    if (!next.ok) throw new Error(next.error.message);
    return next.value;
  }, opened.value);
};

const begin = (step: string): Happening => ({ type: 'stepBegun', step });
const holdJob: Happening = { type: 'jobHeld', reason: { text: 'break' } };

describe('the time of a step', () => {
  test('runs while it is on the screen', () => {
    const state = after(['08:10:00', begin('open')], ['08:15:00', begin('look')]);
    expect(minutes(state, 'look', '08:18:00')).toBe(13);
    expect(minutes(state, 'open', '08:18:00')).toBe(5);
    expect(minutes(state, 'close', '08:18:00')).toBe(0);
    expect(minutes(state, 'polish', '08:18:00')).toBe(0);
  });

  test('stops while the job is on hold', () => {
    const state = after(['08:10:00', holdJob], ['09:00:00', { type: 'jobResumed' }]);
    expect(minutes(after(['08:10:00', holdJob]), 'look', '08:55:00')).toBe(10);
    expect(minutes(state, 'look', '09:02:00')).toBe(12);
  });

  test('never runs backwards when the clock does', () => {
    const state = after(['07:00:00', begin('open')], ['07:05:00', begin('look')]);
    expect(minutes(state, 'look', '07:00:00')).toBe(0);
    expect(minutes(state, 'open', '07:06:00')).toBe(5);
    expect(state.lastAt).toBe(at('07:05:00'));
  });
});
