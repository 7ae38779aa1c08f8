import { describe, expect, test } from 'vitest';
import { jobEventSchema, replay } from '@/lib/job';
import { looseEnds } from '@/lib/ledger';
import type { Adapter } from '@/lib/fastening';
import { Bay } from './driver';
import { doSteps } from './hands';
import { nutJob } from './nut-procedure';
import type { Revision } from '@/lib/procedure';

/** Two bolts, 50 N·m ± 10 %: 45 to 55. */
const boltJob = (safetyCritical: boolean): Revision => {
  const revision = nutJob({ safetyCritical });
  return {
    ...revision,
    groups: revision.groups.map((group) => ({
      ...group,
      passes: group.passes.map(({ prevailing: _, ...pass }) => pass),
    })),
    steps: revision.steps.map((step) => ({
      ...step,
      asks: step.asks.filter(({ id }) => id !== 'turning'),
    })),
  };
};

const atBolts = (safetyCritical = false): Bay => {
  const bay = new Bay(boltJob(safetyCritical));
  doSteps(bay, 'look', 'open');
  bay.begin('close');
  return bay;
};

/** Lengthens the lever by a quarter: 40 N·m set are 50 at the fastener. */
const quarter: Adapter = { wrenchMm: 400, adapterMm: 100, angleDeg: 0 };

const reading = (value: number, adapter?: Adapter, expandedUncertainty?: number) =>
  ({
    type: 'readingTaken',
    step: 'close',
    ask: 'torque',
    fastener: 'lid-1',
    value,
    unit: 'N.m',
    ...(expandedUncertainty === undefined ? {} : { tool: { id: 'w', expandedUncertainty } }),
    ...(adapter === undefined ? {} : { adapter }),
  }) as const;

const verdict = (bay: Bay) => bay.state.readings.at(-1)?.verdict;

describe('a reading with an adapter', () => {
  test('is judged by what the fastener got, not by what the wrench showed', () => {
    const bay = atBolts();
    bay.does(reading(40, quarter));
    expect(bay.state.readings.at(-1)).toMatchObject({ value: 40, canonical: 50, adapter: quarter });
    expect(verdict(bay)).toBe('inSpec');
    bay.does(reading(50, quarter)); // 62.5 at the bolt
    expect(verdict(bay)).toBe('outOfSpec');
    bay.does(reading(50));
    expect(verdict(bay)).toBe('inSpec');
  });

  test('square to the wrench changes nothing, turned back it is less', () => {
    const bay = atBolts();
    bay.does(reading(50, { ...quarter, angleDeg: 90 }));
    expect(bay.state.readings.at(-1)?.canonical).toBe(50);
    bay.does(reading(50, { ...quarter, angleDeg: 180 }));
    expect(bay.state.readings.at(-1)?.canonical).toBe(37.5);
  });

  test('proves less: the tool counts by the lever, and the lengths come on top', () => {
    // 43.2 on the wrench is 54 at the bolt, 1 N·m under the limit; the tool's 0.7 is 0.875 there.
    const bay = atBolts(true);
    bay.does(reading(43.2, quarter, 0.7));
    expect(verdict(bay)).toBe('inSpec');
    // With lengths within 5 mm: hypot(0.875, 0.108 · 5, 0.108 · 5 / 4) = 1.04
    bay.does(reading(43.2, { ...quarter, lengthsWithinMm: 5 }, 0.7));
    expect(verdict(bay)).toBe('notProvable');
  });

  test('is refused where it turns the lever round, or where no torque is asked', () => {
    const bay = atBolts();
    expect(bay.refused(reading(40, { wrenchMm: 100, adapterMm: 90, angleDeg: 180 }))).toBe(
      'wrongAnswer',
    );
    expect(bay.refused(reading(-1, quarter))).toBe('wrongAnswer');
  });

  test('is kept in the record, so that a replay judges the same', () => {
    const bay = atBolts(true);
    bay.does(reading(43.2, { ...quarter, lengthsWithinMm: 5 }, 0.7));
    const stored = bay.log.map((one) => jobEventSchema.parse(JSON.parse(JSON.stringify(one))));
    const again = replay(bay.revision, stored);
    expect(again.ok && again.value.readings).toEqual(bay.state.readings);
  });

  test('leaves a loose end that names both torques', () => {
    const bay = atBolts();
    bay.does(reading(50, quarter));
    bay.does({ ...reading(40, quarter), fastener: 'lid-2' });
    bay.does({ type: 'stepDone', step: 'close' });
    expect(looseEnds(bay.state).find(({ kind }) => kind === 'readingOutOfSpec')?.text).toContain(
      '50 N·m on the wrench, 62.5 N·m at the fastener, is out of spec',
    );
  });
});

describe('what a self-locking nut takes to turn', () => {
  test('is a torque at the fastener too when it was read with an adapter', () => {
    const bay = new Bay(nutJob());
    doSteps(bay, 'look', 'open');
    bay.begin('close');
    bay.does({ ...reading(4.8, quarter), ask: 'turning' }); // 6 at the nut
    bay.does(reading(44.8, quarter)); // 56 there: 50 + 6
    expect(verdict(bay)).toBe('inSpec');
  });
});
