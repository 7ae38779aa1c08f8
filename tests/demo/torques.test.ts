import { describe, expect, test } from 'vitest';
import { demoProcedures } from '@/demo';
import { checkGroupTightening, toleranceInterval } from '@/lib/fastening';

/**
 * Proof load Sp·As in newtons. Sp from ISO 898-1:2013: 8.8 up to 16 mm 580 MPa, above 600 MPa; 10.9 830 MPa.
 * Stress areas from the printed coarse and computed fine tables (ISO 724 diameters), mm²: M6 20.1, M8 36.6,
 * M10 58.0, M12 84.3, M12x1.5 88.1, M14x1.5 125; M5 14.2 and M20x1.5 271.5 by As = π/4·((d2 + d3)/2)².
 */
const proofLoadN: Readonly<Record<string, number>> = {
  'M5 8.8': 8_236,
  'M6 8.8': 11_658,
  'M8 8.8': 21_228,
  'M10 8.8': 33_640,
  'M14x1.5 8.8': 72_500,
  'M20x1.5 8.8': 162_900,
  'M12 10.9': 69_969,
  'M12x1.5 10.9': 73_123,
  'M14x1.5 10.9': 103_750,
};

const torques = demoProcedures.flatMap((revision) =>
  revision.groups.flatMap((group) =>
    group.passes.flatMap(({ id, tightening }) => {
      const spec =
        tightening.kind === 'torque'
          ? tightening.torque
          : tightening.kind === 'torqueAngle'
            ? tightening.snugTorque
            : undefined;
      const interval = spec === undefined ? undefined : toleranceInterval(spec);
      const thread = `${group.thread} ${group.strengthClass}`;
      return interval === undefined ? [] : [[`${group.name}, ${id}`, thread, interval] as const];
    }),
  ),
);

/** T = K·F·d with K = 0.20, dry steel: the short form of the handbooks (Shigley). */
const torqueAtProofNm = (thread: string): number => {
  const diameterM = Number(/^M(\d+)/.exec(thread)?.[1]) / 1000;
  return 0.2 * (proofLoadN[thread] ?? Number.NaN) * diameterM;
};

describe('torques suit their threads', () => {
  test('fifteen groups of the demo have a figure for the final pass', () => {
    expect(torques.filter(([name]) => name.endsWith(', final'))).toHaveLength(15);
  });

  test.each(torques)(
    '%s: between 15 %% and 100 %% of the torque at proof load',
    (_n, thread, i) => {
      const most = torqueAtProofNm(thread);
      expect(i.lower).toBeGreaterThanOrEqual(0);
      expect(i.target).toBeGreaterThanOrEqual(0.15 * most);
      expect(i.upper).toBeLessThanOrEqual(most);
    },
  );
});

test("the procedure writer's own check doubts none of them", () => {
  for (const group of demoProcedures.flatMap(({ groups }) => groups))
    expect([group.id, ...checkGroupTightening(group)]).toEqual([group.id]);
});
