import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseThread, strengthOf, threadOf, type Thread } from '@/lib/fastening';

const read = (text: string) => {
  const result = parseThread(text);
  return result.ok
    ? [result.value.designation, result.value.diameterMm, result.value.pitchMm, result.value.series]
    : result.error.code;
};

describe('a thread', () => {
  it.each([
    ['M8', 'M8', 8, 1.25, 'coarse'],
    ['m8', 'M8', 8, 1.25, 'coarse'],
    ['M8x1.25', 'M8', 8, 1.25, 'coarse'],
    ['M8x1', 'M8x1', 8, 1, 'fine'],
    ['M8×1', 'M8x1', 8, 1, 'fine'],
    ['M 10 x 1,25', 'M10x1.25', 10, 1.25, 'fine'],
    ['M10-1.25', 'M10x1.25', 10, 1.25, 'fine'],
    ['M12x1.5-6g', 'M12x1.5', 12, 1.5, 'fine'],
    ['M12-6H', 'M12', 12, 1.75, 'coarse'],
    ['M2.5', 'M2.5', 2.5, 0.45, 'coarse'],
    ['M9x1', 'M9x1', 9, 1, 'fine'],
    ['M8x1.5', 'M8x1.5', 8, 1.5, 'other'],
  ])('is read from %s', (text, designation, diameterMm, pitchMm, series) => {
    expect(read(text)).toEqual([designation, diameterMm, pitchMm, series]);
  });

  it.each([
    ['3/8-16', '3/8-16', 0.375, 16, 'coarse'],
    ['3/8-16 UNC-2A', '3/8-16', 0.375, 16, 'coarse'],
    ['3/4-16 UNF', '3/4-16', 0.75, 16, 'fine'],
    ['3/4 UNF', '3/4-16', 0.75, 16, 'fine'],
    ['1/4"-28', '1/4-28', 0.25, 28, 'fine'],
    ['#10-24', '#10-24', 0.19, 24, 'coarse'],
    ['#10-32 UNF', '#10-32', 0.19, 32, 'fine'],
    ['No. 8-32', '#8-32', 0.164, 32, 'coarse'],
    ['10-24', '#10-24', 0.19, 24, 'coarse'],
    ['1-8', '1-8', 1, 8, 'coarse'],
    ['1 1/4-7', '1 1/4-7', 1.25, 7, 'coarse'],
    ['1-1/4-12', '1 1/4-12', 1.25, 12, 'fine'],
    ['1/2-12', '1/2-12', 0.5, 12, 'other'],
  ])('is read from %s', (text, designation, inches, perInch, series) => {
    const result = parseThread(text);
    expect(result).toMatchObject({ ok: true, value: { system: 'unified', designation, series } });
    expect(result.ok && result.value.diameterMm / 25.4).toBeCloseTo(inches, 12);
    expect(result.ok && 25.4 / result.value.pitchMm).toBeCloseTo(perInch, 12);
  });

  it.each([
    ['', 'notAThread'],
    ['bolt', 'notAThread'],
    ['M', 'notAThread'],
    ['M8x', 'notAThread'],
    ['G1/4', 'notAThread'],
    ['M13', 'pitchMissing'],
    ['3/8', 'pitchMissing'],
    ['3/4-16 UNC', 'seriesContradicts'],
    ['M0', 'pitchMissing'],
    ['M0x1', 'outOfDomain'],
    ['M8x0', 'outOfDomain'],
    ['M8x6', 'outOfDomain'],
    ['3/0-16', 'outOfDomain'],
    ['3/8-0', 'outOfDomain'],
    ['M9999', 'pitchMissing'],
    ['M9999x2', 'outOfDomain'],
  ])('is not read from "%s": %s', (text, code) => {
    expect(read(text)).toBe(code);
  });

  it('is read again from its own designation', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('M5', 'M16x1.5', '#6-32', '7/16-20', '1 3/8-6', '2-4'),
        (text) => {
          const result = parseThread(text);
          expect(result.ok && parseThread(result.value.designation)).toEqual(result);
          expect(result.ok && result.value.designation).toBe(text);
        },
      ),
    );
  });

  it('gives a thread or a reason, whatever is typed', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.stringMatching(/^M\d{0,4}(\.\d)?(x\d{0,3}(\.\d\d?)?)?$/),
          fc.stringMatching(/^#?\d{1,3}([ /-]\d{1,3}){0,3}( UN[CF])?$/),
        ),
        (text) => {
          const result = parseThread(text);
          if (result.ok) {
            const { minorDiameterMm, stressAreaMm2, diameterMm } = result.value;
            expect(minorDiameterMm).toBeGreaterThanOrEqual(diameterMm / 2);
            expect(stressAreaMm2).toSatisfy(Number.isFinite);
          } else expect(result.error.message).not.toBe('');
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('of any sizes has its diameters in their sequence, or is refused', () => {
    fc.assert(
      fc.property(
        fc.double(),
        fc.double(),
        fc.constantFrom('metric', 'unified'),
        (diameterMm, pitchMm, system) => {
          const result = threadOf({
            system,
            designation: 'any',
            series: 'other',
            diameterMm,
            pitchMm,
          });
          if (!result.ok) {
            expect(result.error.code).toBe('outOfDomain');
            return;
          }
          const { minorDiameterMm, stressDiameterMm, pitchDiameterMm } = result.value;
          // A pitch of nothing beside the diameter leaves them equal.
          expect(minorDiameterMm).toBeLessThanOrEqual(stressDiameterMm);
          expect(stressDiameterMm).toBeLessThanOrEqual(pitchDiameterMm);
          expect(pitchDiameterMm).toBeLessThanOrEqual(diameterMm);
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('a strength class', () => {
  const on = (text: string): Thread => {
    const result = parseThread(text);
    if (!result.ok) throw new Error(result.error.message);
    return result.value;
  };
  const name = (written: string, thread: string) => {
    const result = strengthOf(written, on(thread));
    return result.ok ? result.value.class : result.error.code;
  };

  it.each([
    ['8.8', 'M8', '8.8'],
    ['class 10.9', 'M8', '10.9'],
    ['10,9', 'M8', '10.9'],
    ['8', 'M8', '8.8'],
    ['10', 'M8', '10.9'],
    ['grade 5', '3/8-16', 'grade 5'],
    ['Gr.8', '3/8-16', 'grade 8'],
    ['SAE 2', '3/8-16', 'grade 2'],
    ['5', '3/8-16', 'grade 5'],
    ['10.9', '3/8-16', '10.9'],
  ])('%s on %s is %s', (written, thread, known) => {
    expect(name(written, thread)).toBe(known);
  });

  it.each([
    ['strong', 'M8', 'unknownStrength'],
    ['', 'M8', 'unknownStrength'],
    ['toString', 'M8', 'unknownStrength'],
    ['grade 9', '3/8-16', 'unknownStrength'],
    ['grade 5', '2-4', 'tooLargeForClass'],
  ])('%s on %s is not: %s', (written, thread, code) => {
    expect(name(written, thread)).toBe(code);
  });
});
