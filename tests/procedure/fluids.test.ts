import { describe, expect, test } from 'vitest';
import type { Specification } from '@/lib/fastening';
import { checkRevision, revisionSchema, type Revision } from '@/lib/procedure';
import { coolantJob } from '../job/coolant-procedure';
import { lidJob } from '../job/lid-procedure';

const found = (revision: Revision) => {
  const { faults, doubts } = checkRevision(revision);
  return {
    faults: faults.map(({ message }) => message),
    doubts: doubts.map(({ message }) => message),
  };
};

/** The lid job, 3 L of oil ± 0.2 L, with another volume to fill. */
const filledTo = (spec: Specification): Revision => ({
  ...lidJob,
  steps: lidJob.steps.map((step) =>
    step.id === 'fill'
      ? {
          ...step,
          asks: [
            {
              kind: 'value',
              id: 'filled',
              label: 'Oil filled',
              of: { kind: 'fluid', fluid: 'oil', use: 'filled', spec },
            },
          ],
        }
      : step,
  ),
});

describe('the fluids of a procedure', () => {
  test('may be spilled, returned, and hold less without a new filter', () => {
    expect(revisionSchema.safeParse(coolantJob()).error).toBeUndefined();
    expect(found(coolantJob())).toEqual({ faults: [], doubts: [] });
  });

  test('name a filter that is there', () => {
    const filter = { part: 'sieve', capacityWithoutL: 7 };
    expect(found(coolantJob({ filter })).faults).toEqual([
      'There is no part “sieve”: add it or correct the name.',
    ]);
  });

  test('never hold more without a new filter than with one', () => {
    const filter = { part: 'filter', capacityWithoutL: 8.5 };
    expect(found(coolantJob({ filter })).faults).toEqual([
      '“Coolant”: With a new filter it takes at least as much as without.',
    ]);
  });

  test('that may not go back are hardly asked how much went back', () => {
    expect(found(coolantJob({ mayReturn: false }))).toEqual({
      faults: [],
      doubts: ['“Coolant” may not go back, and a step asks how much of it was poured back.'],
    });
  });
});

describe('a volume to fill', () => {
  test('within the limits of the capacity is not doubted', () => {
    expect(found(filledTo({ kind: 'range', unit: 'L', lower: 2.8, upper: 3.2 })).doubts).toEqual(
      [],
    );
    // 3.17 US quarts are 3.00 L (NIST SP 811: 0.9463529 L each).
    expect(
      found(filledTo({ kind: 'range', unit: '[qt_us]', lower: 3.1, upper: 3.24 })).doubts,
    ).toEqual([]);
  });

  test('that was meant in another unit is doubted, and the slip is named', () => {
    expect(found(filledTo({ kind: 'range', unit: 'L', lower: 3.3, upper: 3.38 }))).toEqual({
      faults: [],
      doubts: [
        '“Oil” is to be filled to 3.34 L; its capacity allows 2.8–3.2 L. 3.34 is the US qt figure; 3.16 L?',
      ],
    });
  });

  test('with its point slipped is doubted, and the slip is named', () => {
    expect(found(filledTo({ kind: 'range', unit: 'L', lower: 28, upper: 32 })).doubts).toEqual([
      '“Oil” is to be filled to 30 L; its capacity allows 2.8–3.2 L. 30: is it 3?',
    ]);
  });
});
