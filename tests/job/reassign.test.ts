import { describe, expect, test } from 'vitest';
import type { Happening } from '@/lib/job';
import { Bay } from './driver';
import { doSteps } from './hands';
import { lidJob } from './lid-procedure';

const why = { text: 'the lift of bay 1 is broken' };
const moved = (bay: string, mechanic?: string): Happening => ({
  type: 'jobReassigned',
  bay,
  ...(mechanic === undefined ? {} : { mechanic }),
  reason: why,
});

const underWay = (): Bay => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain');
  return bay;
};

describe('a foreman who moves a job', () => {
  test('puts it into another bay, where any kiosk may take it up, and nothing else of it changes', () => {
    const bay = underWay();
    const { bay: _, seq: _seq, lastAt: _at, atKiosk, ...before } = bay.state;
    expect(atKiosk).toMatchObject({ device: 'kiosk-1' });
    bay.does(moved('bay-2'), 'fred');
    expect(bay.state.bay).toBe('bay-2');
    expect(bay.state).toMatchObject(before);
    expect(bay.state.atKiosk).toBeUndefined();
    expect(bay.state.assigned).toBeUndefined();
  });

  test('gives it to another mechanic where it stands', () => {
    const bay = underWay();
    bay.does(moved('bay-1', 'max'), 'fred');
    expect(bay.state.assigned).toEqual({ mechanic: 'max', seq: bay.state.seq });
  });

  test('does no work by it, and may still sign for the job', () => {
    const bay = underWay();
    bay.does(moved('bay-2'), 'fred');
    expect(bay.state.workers).toEqual(['mia']);
  });

  test('may do so while the job is on hold; the hold stays', () => {
    const bay = underWay();
    bay.does({ type: 'jobHeld', reason: why });
    bay.does(moved('bay-2'), 'fred');
    expect(bay.state).toMatchObject({ phase: 'held', bay: 'bay-2' });
  });

  test('must change something', () => {
    expect(underWay().refused(moved('bay-1'), 'fred')).toBe('nothingChanged');
  });
});

test('a mechanic moves no job', () => {
  expect(underWay().refused(moved('bay-2'), 'mia')).toBe('notForeman');
});

test('who answered the last call stays known until the next one', () => {
  const bay = underWay();
  bay.does({ type: 'foremanCalled' });
  bay.does({ type: 'foremanAnswered' }, 'fred');
  expect(bay.state.foremanCalledAt).toBeUndefined();
  expect(bay.state.foremanAnswered).toEqual({ by: 'fred', at: bay.state.lastAt });
  bay.does({ type: 'foremanCalled' });
  expect(bay.state.foremanAnswered).toBeUndefined();
});
