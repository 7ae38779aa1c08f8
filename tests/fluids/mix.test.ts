import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mix, partsFor, replaceFor } from '@/lib/fluids';

describe('coolants poured together', () => {
  it('mix by their volumes', () => {
    expect(mix({ volumeL: 4, strength: 0.5 }, { volumeL: 4, strength: 0 })).toEqual({
      ok: true,
      value: { volumeL: 8, strength: 0.25 },
    });
    expect(mix({ volumeL: 3, strength: 1 }, { volumeL: 3, strength: 0 })).toMatchObject({
      value: { strength: 0.5 },
    });
  });

  it('are refused without volumes and strengths', () => {
    const kind = (volumeL: number, strength: number) => {
      const result = mix({ volumeL, strength }, { volumeL: 0, strength: 0.5 });
      return result.ok ? result.value : result.error.kind;
    };
    expect(kind(-1, 0.5)).toBe('notAVolume');
    expect(kind(Number.NaN, 0.5)).toBe('notAVolume');
    expect(kind(1, 50)).toBe('notAStrength');
    expect(kind(1, Number.NaN)).toBe('notAStrength');
    expect(kind(0, 0.5)).toBe('outOfDomain');
  });
});

describe('a system brought to another strength', () => {
  it('has a part drained and replaced', () => {
    expect(replaceFor({ volumeL: 8, strength: 0.3 }, 1, 0.5)).toMatchObject({ ok: true });
    const result = replaceFor({ volumeL: 8, strength: 0.25 }, 1, 0.5);
    expect(result.ok && result.value).toBeCloseTo(8 / 3, 12);
    expect(replaceFor({ volumeL: 8, strength: 0.5 }, 0, 0.5)).toEqual({ ok: true, value: 0 });
  });

  it('cannot pass the strength of the refill', () => {
    expect(replaceFor({ volumeL: 8, strength: 0.25 }, 0.4, 0.5)).toMatchObject({
      error: { kind: 'outOfDomain' },
    });
    expect(replaceFor({ volumeL: 8, strength: 0.25 }, 0.25, 0.5)).toMatchObject({
      error: { kind: 'outOfDomain' },
    });
  });

  it('comes out as wanted when what was computed is drained and poured', () => {
    const fraction = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fraction, fraction, fraction, (strength, refill, wanted) => {
        const litres = replaceFor({ volumeL: 8, strength }, refill, wanted);
        if (!litres.ok) return;
        const after = mix(
          { volumeL: 8 - litres.value, strength },
          { volumeL: litres.value, strength: refill },
        );
        expect(after.ok && after.value.strength).toBeCloseTo(wanted, 9);
      }),
    );
  });
});

describe('a fill made up', () => {
  it('is concentrate and water', () => {
    expect(partsFor(10, 0.6)).toEqual({ ok: true, value: { concentrateL: 6, waterL: 4 } });
    expect(partsFor(10, 60)).toMatchObject({ error: { kind: 'notAStrength' } });
  });

  it('is never NaN and never a throw, whatever the numbers', () => {
    const any = fc.double();
    fc.assert(
      fc.property(any, any, any, any, (a, b, c, d) => {
        const results = [
          mix({ volumeL: a, strength: b }, { volumeL: c, strength: d }),
          replaceFor({ volumeL: a, strength: b }, c, d),
          partsFor(a, b),
        ];
        for (const result of results) {
          if (!result.ok) continue;
          const values =
            typeof result.value === 'number' ? [result.value] : Object.values(result.value);
          for (const value of values) expect(Number.isFinite(value)).toBe(true);
        }
      }),
    );
  });
});
