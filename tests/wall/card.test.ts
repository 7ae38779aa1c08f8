import { describe, expect, test } from 'vitest';
import { wallMessageSchema } from '@/lib/wall';
import { doAllOpen, doStep } from '../job/hands';
import { cardOf, soonAfter, underWay, why } from './shop-floor';

describe('the card of a bay', () => {
  test('is empty where no job is open, and nothing needs anybody', () => {
    expect(cardOf(undefined)).toEqual({
      bay: { id: 'bay-1', name: 'Bay 1' },
      kiosk: {},
      wants: [],
    });
  });

  test('tells vehicle, procedure, step, mechanic and what is loose', () => {
    const { state } = underWay();
    const { job } = cardOf(state);
    expect(job).toMatchObject({
      plate: 'T 1',
      vehicle: 'Test rig',
      procedure: 'Reseal the lid',
      phase: 'running',
      step: { number: 2, of: state.revision.steps.length, settled: 2 },
      mechanic: 'MIA',
    });
    expect(job?.ends).toEqual(
      expect.arrayContaining([
        { kind: 'fluidOut', count: 1 },
        { kind: 'partOff', count: 4 },
        { kind: 'fastenerOpen', count: 5 },
      ]),
    );
    expect(job?.ends.map(({ kind }) => kind)).not.toContain('stepOpen');
  });

  test('tells the time spent by a sum and an instant from which it runs on', () => {
    const bay = underWay();
    const { job } = cardOf(bay.state);
    const spent = Object.values(bay.state.steps).reduce((sum, { spentMs }) => sum + spentMs, 0);
    expect(job?.spentMs).toBe(spent);
    expect(job?.runningSince).toBe(bay.state.clockSince);
    bay.does({ type: 'jobHeld', reason: why });
    const held = cardOf(bay.state).job;
    expect(held?.runningSince).toBeUndefined();
    expect(held?.spentMs).toBeGreaterThan(spent);
  });

  test('expects an end while the job runs, the bound not before the middle, and none while it stands', () => {
    const bay = underWay();
    const { finish } = cardOf(bay.state).job ?? {};
    expect(finish?.from).toBe('book');
    expect(Date.parse(finish?.typicalAt ?? '')).toBeGreaterThan(soonAfter(bay.state));
    expect(Date.parse(finish?.safeAt ?? '')).toBeGreaterThan(Date.parse(finish?.typicalAt ?? ''));
    bay.does({ type: 'jobHeld', reason: why });
    expect(cardOf(bay.state).job?.finish).toBeUndefined();
  });

  test('expects the end by earlier jobs where there are enough of them', () => {
    const { state } = underWay();
    const quick = Object.fromEntries(state.revision.steps.map(({ id }) => [id, [1, 1, 1, 1, 1]]));
    const { finish } = cardOf(state, { earlier: quick }).job ?? {};
    expect(finish?.from).toBe('history');
    const byBook = cardOf(state).job?.finish;
    expect(Date.parse(finish?.safeAt ?? '')).toBeLessThan(Date.parse(byBook?.typicalAt ?? ''));
  });

  test('shows why a job is on hold, since when and by whom', () => {
    const bay = underWay();
    bay.does({ type: 'jobHeld', reason: { text: 'Waiting for parts' } }, 'max');
    expect(cardOf(bay.state).job?.hold).toEqual({
      reason: { text: 'Waiting for parts', spoken: false },
      since: bay.state.lastAt,
      by: 'MAX',
    });
  });

  test('names the last torque that stands, with its verdict', () => {
    const bay = underWay();
    expect(cardOf(bay.state).job?.lastTorque).toBeUndefined();
    doAllOpen(bay);
    const { lastTorque } = cardOf(bay.state).job ?? {};
    const last = bay.state.readings.findLast(({ unit }) => unit === 'N.m');
    expect(lastTorque).toMatchObject({ verdict: last?.verdict, at: last?.at });
    expect(lastTorque?.value).toBe(`${String(last?.value)} N·m`);
  });

  test('names who has the job: who did something last, or whom a foreman gave it to since', () => {
    const bay = underWay();
    bay.does({ type: 'jobReassigned', bay: 'bay-1', mechanic: 'max', reason: why }, 'fred');
    expect(cardOf(bay.state).job?.mechanic).toBe('MAX');
    bay.begin('open-hub');
    doStep(bay, 'open-hub');
    expect(cardOf(bay.state).job?.mechanic).toBe('MIA');
  });

  test('is empty again once the job is closed', () => {
    const { state } = underWay();
    expect(cardOf({ ...state, phase: 'closed' }).job).toBeUndefined();
  });

  test('can be sent and read back as it is', () => {
    const bay = underWay();
    bay.does({ type: 'foremanCalled' });
    const message = { kind: 'some', now: bay.state.lastAt, bays: [cardOf(bay.state)] };
    expect(wallMessageSchema.parse(JSON.parse(JSON.stringify(message)))).toEqual(message);
  });
});
