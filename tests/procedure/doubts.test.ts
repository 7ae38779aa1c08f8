import { describe, expect, test } from 'vitest';
import { doubtLines } from '@/lib/cli/doubt-lines';
import { checkRevision, fastenerGroupSchema, type FastenerGroup } from '@/lib/procedure';
import type { Unit } from '@/lib/quantity';
import { lidJob } from '../job/lid-procedure';

/** The lid job with its three lid bolts (M6 8.8) changed. */
const withLidBolts = (changes: Partial<FastenerGroup>) => ({
  ...lidJob,
  groups: lidJob.groups.map((group) =>
    group.id === 'lid-bolts' ? { ...group, ...changes } : group,
  ),
});

const finalTorque = (target: number, unit: Unit): Partial<FastenerGroup> => ({
  passes: [
    { id: 'snug', stage: 'snug', tightening: { kind: 'byFeel' } },
    {
      id: 'final',
      stage: 'final',
      tightening: {
        kind: 'torque',
        torque: { kind: 'target', unit, target, tolerance: { in: 'percent', plus: 10, minus: 10 } },
      },
    },
  ],
});

const doubtsOf = (changes: Partial<FastenerGroup>): readonly string[] =>
  checkRevision(withLidBolts(changes)).doubts.map(({ message }) => message);

// M6: As 20.1 mm² and 8.8: Sp 580 MPa (ISO 898-1); 0.2 · 580 · 20.1 · 6 mm = 14 N·m at proof load (Shigley's short form).
describe('a typed-in torque', () => {
  test('of 10 N·m on M6 8.8 is not doubted', () => {
    expect(doubtsOf(finalTorque(10, 'N.m'))).toEqual([]);
  });

  test('of 88 N·m that was meant as lbf·in is doubted, and the slip is named', () => {
    expect(doubtsOf(finalTorque(88, 'N.m'))).toEqual([
      '“Lid bolts”, pass “final”: 88 N·m is 628 % of the torque at proof load of M6 8.8: ' +
        'it may stretch the bolt for good. 88 is the lbf·in figure; 10 N·m?',
    ]);
  });

  test('of 1.0 with its point slipped is doubted, and the slip is named', () => {
    expect(doubtsOf(finalTorque(1, 'N.m'))).toEqual([
      '“Lid bolts”, pass “final”: 1 N·m is 7 % of the torque at proof load of M6 8.8: ' +
        'low for a screwed joint. 1: is it 10?',
    ]);
  });

  test('that only looks odd keeps nothing from being published', () => {
    expect(checkRevision(withLidBolts(finalTorque(88, 'N.m'))).faults).toEqual([]);
  });
});

describe('passes', () => {
  test('that do not rise are doubted', () => {
    const group = lidJob.groups.find(({ id }) => id === 'lid-bolts');
    const [snug, final] = group?.passes ?? [];
    if (snug === undefined || final === undefined) throw new Error('the example has changed');
    const passes = [
      { ...snug, tightening: final.tightening },
      { ...final, tightening: snug.tightening },
    ];
    expect(doubtsOf({ passes })).toEqual([
      '“Lid bolts”: A pass asks for less torque than the one before.',
    ]);
  });

  test('by angle on bolts that are used again are doubted', () => {
    expect(
      doubtsOf({
        passes: [
          {
            id: 'final',
            stage: 'final',
            tightening: {
              kind: 'torqueAngle',
              snugTorque: { kind: 'range', unit: 'N.m', lower: 4, upper: 6 },
              angle: { kind: 'range', unit: 'deg', lower: 85, upper: 95 },
            },
          },
        ],
      }),
    ).toEqual([
      '“Lid bolts”: Turned by angle but not marked single use: only the maker’s sheet may allow it again.',
    ]);
  });
});

describe('a thread', () => {
  const [example] = lidJob.groups;
  const reads = (thread: string): boolean =>
    fastenerGroupSchema.safeParse({ ...example, thread }).success;

  test.each(['M8', 'M8x1', 'M10 × 1,25', '3/8-16', '1/2-20', '#10-24', '1 1/4-7 UNC', '3/4 UNF'])(
    '%s can be written',
    (thread) => {
      expect(reads(thread)).toBe(true);
    },
  );

  test.each(['', 'eight', 'M', '3/8', 'W 1/2'])('“%s” cannot', (thread) => {
    expect(reads(thread)).toBe(false);
  });

  test.each(['M13', 'M8x6', 'M1.55'])(
    '%s, stored before it was looked at, still reads',
    (thread) => {
      expect(reads(thread)).toBe(true);
    },
  );

  test('without a pitch anybody knows is doubted', () => {
    expect(doubtsOf({ thread: 'M13' })).toContain(
      '“Lid bolts”, pass “final”: M13 has no standard coarse pitch: add it, as in M13x1.',
    );
  });

  // 3/8-16: As 0.0775 in² (ASME B1.1), grade 5: Sp 85 ksi (SAE J429): 0.2 · 6588 lbf · 0.375 in = 494 lbf·in.
  test('of inches is compared with its own proof load', () => {
    const inches = { thread: '3/8-16', strengthClass: 'grade 5' };
    expect(doubtsOf({ ...inches, ...finalTorque(33, '[lbf_av].[ft_i]') })).toEqual([]);
    expect(doubtsOf({ ...inches, ...finalTorque(14, '[lbf_av].[in_i]') })).toEqual([
      '“Lid bolts”, pass “final”: 14 lbf·in is 3 % of the torque at proof load of 3/8-16 grade 5: ' +
        'low for a screwed joint. 14 is the lbf·ft figure; 168 lbf·in?',
    ]);
  });
});

test('whoever starts the server is shown each doubt with the procedure that it is in', () => {
  expect(doubtLines([lidJob, withLidBolts(finalTorque(1, 'N.m'))])).toEqual([
    'Look again at “Reseal the lid”, revision 1, groups/lid-bolts/final: “Lid bolts”, pass “final”: ' +
      '1 N·m is 7 % of the torque at proof load of M6 8.8: low for a screwed joint. 1: is it 10?',
  ]);
});
