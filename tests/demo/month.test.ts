import { describe, expect, test } from 'vitest';
import { demoProcedures, demoShop } from '@/demo';
import { demoMonth } from '@/demo/month';
import { jobEventSchema, replay, type HappeningType, type JobState } from '@/lib/job';
import { looseEnds } from '@/lib/ledger';
import { ENOUGH_POINTS, individualsChart, zoneSignals } from '@/lib/statistics';

const wish = { seed: 'spring', until: '2026-03-31', days: 30 };
const month = demoMonth(wish);
const events = month.flat();

const states: readonly JobState[] = month.map((job) => {
  const opening = job[0]?.happening;
  const revision = demoProcedures.find(
    ({ procedure }) => opening?.type === 'jobOpened' && procedure === opening.procedure,
  );
  if (revision === undefined) throw new Error('a job of no demo procedure');
  const state = replay(revision, job);
  if (!state.ok) throw new Error(`event ${state.error.at}: ${state.error.message}`);
  return state.value;
});

const count = (type: HappeningType): number =>
  events.filter(({ happening }) => happening.type === type).length;

/** The counted readings of one joint, in the order of time. */
const joint = (ask: string, fastener?: string): readonly number[] =>
  states
    .flatMap(({ readings }) => readings)
    .filter((one) => one.ask === ask && one.fastener === fastener && one.status === 'counted')
    .sort((a, b) => (a.at < b.at ? -1 : 1))
    .map(({ canonical }) => canonical);

describe('a month of the demo shop', () => {
  test('every event has the stored form, and every job replays to its close with nothing left unsigned', () => {
    for (const event of events) expect(jobEventSchema.safeParse(event).error).toBeUndefined();
    for (const state of states) {
      expect(state.phase).toBe('closed');
      expect(looseEnds(state).filter(({ signedBy }) => signedBy === undefined)).toEqual([]);
    }
  });

  test('is the same for the same wish and another for another seed', () => {
    const short = { ...wish, days: 4 };
    expect(demoMonth(short)).toEqual(demoMonth(short));
    expect(demoMonth({ ...short, seed: 'autumn' })).not.toEqual(demoMonth(short));
  });

  test('lies within its days, has every id once, and never two jobs at once in a bay', () => {
    expect(new Set(events.map(({ id }) => id)).size).toBe(events.length);
    for (const { at } of events) {
      expect(at >= '2026-03-01T00:00:00.000Z').toBe(true);
      expect(at < '2026-03-31T00:00:00.000Z').toBe(true);
    }
    for (const { id } of demoShop('2026-03-31').bays) {
      const here = states
        .filter(({ bay }) => bay === id)
        .sort((a, b) => (a.openedAt < b.openedAt ? -1 : 1));
      expect(here.length).toBeGreaterThan(5);
      for (const [index, state] of here.slice(1).entries())
        expect(state.openedAt >= (here[index]?.closedAt ?? '')).toBe(true);
    }
  });

  test('has all three procedures, both mechanics and jobs handed over from one to the other', () => {
    expect(new Set(states.map(({ revision }) => revision.procedure)).size).toBe(3);
    expect(new Set(states.flatMap(({ workers }) => workers))).toEqual(
      new Set(['tom-ashby', 'jo-fenn']),
    );
    expect(states.filter(({ workers }) => workers.length === 2).length).toBeGreaterThan(5);
  });

  test('has what a review looks at: deviations of each kind but one, rework, holds, values taken back', () => {
    const kinds = new Set(states.flatMap(({ deviations }) => deviations.map(({ kind }) => kind)));
    // No demo procedure lets a part be chosen that its sheet wants new.
    expect([...kinds].sort()).toEqual([
      'anotherWay',
      'leftOut',
      'missingOrDamaged',
      'orderChanged',
      'outOfSpec',
      'rework',
    ]);
    expect(count('stepReopened')).toBeGreaterThan(10);
    expect(count('entryWithdrawn')).toBeGreaterThan(10);
    expect(count('looseEndSigned')).toBeGreaterThan(10);
    const holds = new Set(
      events.flatMap(({ happening }) =>
        happening.type === 'jobHeld' ? [happening.reason.text] : [],
      ),
    );
    expect(holds.size).toBeGreaterThanOrEqual(5);
    const decided = new Set(
      states.flatMap(({ deviations }) => deviations.map(({ decision }) => decision?.word)),
    );
    expect(decided).toEqual(new Set(['accepted', 'acceptedRecheckDue', 'rework']));
  });

  test('has hearings of every sureness, and some that were asked back', () => {
    const heard = events.flatMap(({ input }) => (input.by === 'voice' ? [input] : []));
    expect(heard.length).toBeGreaterThan(events.length / 2);
    const askedBack = heard.filter((one) => one.askedBack).length;
    expect(askedBack).toBeGreaterThan(100);
    expect(askedBack).toBeLessThan(heard.length / 5);
    expect(Math.min(...heard.map(({ confidence }) => confidence))).toBeLessThan(0.6);
  });

  test('each joint has enough readings for a chart, and the tired wrench shows on one', () => {
    const bolt = joint('cover-torque', 'cover-3');
    expect(bolt.length).toBeGreaterThan(ENOUGH_POINTS);
    const drifting = ['pump-torque', 'sensor-torque', 'stud-torque', 'coolant-plug-torque'];
    const signals = drifting.flatMap((ask) => {
      const values = joint(ask);
      const limits = individualsChart(values);
      const found = limits.ok ? zoneSignals(values, limits.value) : limits;
      return found.ok ? found.value : [];
    });
    expect(signals.length).toBeGreaterThan(0);
  });

  test('judges the same joint with more than one tool', () => {
    const tools = new Set(
      states.flatMap(({ readings }) =>
        readings.filter(({ ask }) => ask === 'wheel-torque').map(({ tool }) => tool?.id),
      ),
    );
    expect(tools.size).toBeGreaterThan(1);
  });
});
