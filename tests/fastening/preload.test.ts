import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  aluminium,
  assemblyPreloadN,
  bearingStressMpa,
  hexagonBearing,
  parseThread,
  preloadByNutFactorN,
  preloadForTorqueN,
  proofLoadN,
  requiredEngagementMm,
  strengthOf,
  strippingLoadN,
  torqueByNutFactorNm,
  torqueForPreloadNm,
  type Thread,
} from '@/lib/fastening';
import type { Result } from '@/lib/result';

const sure = <T>(result: Result<T, { readonly message: string }>): T => {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const thread = (text: string): Thread => sure(parseThread(text));
const strength = (name: string, on: string) => sure(strengthOf(name, thread(on)));

const friction = { thread: 0.12, head: 0.12 };
const some = fc.constantFrom('M6', 'M8', 'M8x1', 'M12x1.5', 'M20', '3/8-16', '#10-24');
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('torque and preload', () => {
  it('lead back to each other, in the long form and the short', () => {
    fc.assert(
      fc.property(some, within(1, 1e6), within(0.04, 0.6), (on, preloadN, mu) => {
        const joint = { thread: thread(on), friction: { thread: mu, head: mu / 2 } };
        const long = sure(torqueForPreloadNm(preloadN, joint));
        expect(sure(preloadForTorqueN(long, joint)) / preloadN).toBeCloseTo(1, 12);
        const short = sure(torqueByNutFactorNm(preloadN, mu, thread(on)));
        expect(sure(preloadByNutFactorN(short, mu, thread(on))) / preloadN).toBeCloseTo(1, 12);
      }),
    );
  });

  it('more friction takes more torque for the same preload, and leaves less of it to the bolt', () => {
    const torque = (mu: number) =>
      sure(
        torqueForPreloadNm(20_000, { thread: thread('M8'), friction: { thread: mu, head: mu } }),
      );
    expect(torque(0.2)).toBeGreaterThan(torque(0.1));
    const assembly = (mu: number) =>
      sure(assemblyPreloadN(thread('M8'), strength('8.8', 'M8'), mu));
    expect(assembly(0.2)).toBeLessThan(assembly(0.1));
  });

  it('twist takes its share: what a bolt is tightened to lies below its yield strength by tension alone', () => {
    fc.assert(
      fc.property(some, fc.constantFrom('8.8', '10.9'), within(0.04, 0.4), (on, name, mu) => {
        const at = thread(on);
        const steel = strength(name, on);
        const preloadN = sure(assemblyPreloadN(at, steel, mu));
        expect(preloadN).toBeLessThan(0.9 * steel.yieldMpa * at.stressAreaMm2);
      }),
    );
  });

  it('are numbers or reasons, whatever comes in', () => {
    fc.assert(
      fc.property(
        some,
        fc.double(),
        fc.double(),
        fc.double(),
        fc.double(),
        (on, value, mu, outer, hole) => {
          const at = thread(on);
          const bearing = { outerMm: outer, holeMm: hole, source: 'any' };
          const joint = { thread: at, friction: { thread: mu, head: mu } };
          const steel = {
            class: 'any',
            proofMpa: value,
            yieldMpa: value,
            tensileMpa: value,
            source: 'any',
          };
          const part = { name: 'any', bearingMpa: outer, shearMpa: outer };
          for (const result of [
            torqueForPreloadNm(value, joint),
            torqueForPreloadNm(value, { ...joint, bearing }),
            preloadForTorqueN(value, joint),
            torqueByNutFactorNm(value, mu, at),
            preloadByNutFactorN(value, mu, at),
            assemblyPreloadN(at, steel, mu),
            bearingStressMpa(value, bearing),
            requiredEngagementMm(at, steel, part),
            strippingLoadN(at, value, part),
          ]) {
            if (result.ok) expect(result.value).toSatisfy(Number.isFinite);
            else expect(result.error.code).toBe('outOfDomain');
          }
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('is refused for friction that is none, and a hole larger than what bears on it', () => {
    const at = thread('M8');
    expect(
      torqueForPreloadNm(20_000, { thread: at, friction: { thread: 0, head: 0.1 } }),
    ).toMatchObject({
      error: {
        what: 'friction in the thread',
        message: 'The friction in the thread must be above zero.',
      },
    });
    expect(
      torqueForPreloadNm(20_000, { thread: at, friction: { thread: 0.1, head: 1.4 } }),
    ).toMatchObject({
      error: { what: 'friction' },
    });
    const bearing = { outerMm: 9, holeMm: 9, source: 'example' };
    expect(torqueForPreloadNm(20_000, { thread: at, friction, bearing })).toMatchObject({
      error: { what: 'hole' },
    });
  });
});

describe('a head on its part', () => {
  it('presses with the preload over the ring that it bears on', () => {
    // M8: π/4 · (11.63² − 9²) = 42.61 mm²
    expect(sure(bearingStressMpa(17_200, hexagonBearing(thread('M8'))))).toBeCloseTo(403.6, 0);
  });

  it('of a size without a row is assumed, and says so', () => {
    const bearing = hexagonBearing(thread('1/2-13'));
    expect(bearing.outerMm).toBeCloseTo(17.78, 9);
    expect(bearing.holeMm).toBeCloseTo(13.97, 9);
    expect(bearing.source).toBe('assumed 1.4 · d and 1.1 · d');
  });
});

describe('a bolt in aluminium', () => {
  it('of class 8.8 needs about twice its diameter in a casting, the rule of the trade', () => {
    for (const on of ['M6', 'M8', 'M10', 'M12']) {
      const at = thread(on);
      const needed = sure(requiredEngagementMm(at, strength('8.8', on), aluminium.cast));
      expect(needed / at.diameterMm).toBeGreaterThan(1.9);
      expect(needed / at.diameterMm).toBeLessThan(2.1);
    }
  });

  it('needs M8 8.8 in a casting: 1.2 · 800 · 36.61 ÷ (0.897 · 120 · π · 8 · 0.875) + 1.25 = 16.1 mm', () => {
    expect(
      sure(requiredEngagementMm(thread('M8'), strength('8.8', 'M8'), aluminium.cast)),
    ).toBeCloseTo(16.1, 1);
  });

  it('breaks just where its threads strip, at the engagement that it needs', () => {
    fc.assert(
      fc.property(some, fc.constantFrom('8.8', '10.9'), (on, name) => {
        const at = thread(on);
        const steel = strength(name, on);
        const needed = sure(requiredEngagementMm(at, steel, aluminium.cast));
        const strips = sure(strippingLoadN(at, needed, aluminium.cast));
        expect(strips / (1.2 * steel.tensileMpa * at.stressAreaMm2)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('holds nothing with less than one pitch screwed in', () => {
    expect(strippingLoadN(thread('M8'), 1.25, aluminium.cast)).toMatchObject({
      error: { what: 'bearing part of the engaged length' },
    });
  });

  it('needs less in the stronger alloy and more as a stronger bolt', () => {
    const needed = (name: string, part: keyof typeof aluminium) =>
      sure(requiredEngagementMm(thread('M8'), strength(name, 'M8'), aluminium[part]));
    expect(needed('8.8', 'wrought')).toBeLessThan(needed('8.8', 'cast'));
    expect(needed('10.9', 'cast')).toBeGreaterThan(needed('8.8', 'cast'));
    expect(proofLoadN(thread('M8'), strength('8.8', 'M8'))).toBeCloseTo(21_233, 0);
  });
});
