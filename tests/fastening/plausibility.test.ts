import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plausibility, type Specification } from '@/lib/fastening';
import { unitSchema } from '@/lib/quantity';

const about = (target: number, unit: Specification['unit'] = 'N.m'): Specification => ({
  kind: 'target',
  unit,
  target,
  tolerance: { in: 'percent', plus: 10, minus: 10 },
});

const judged = (...of: Parameters<typeof plausibility>) => {
  const result = plausibility(...of);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

describe('a torque written for a thread', () => {
  it('is plausible between 15 and 100 percent of the torque at proof load', () => {
    // M8 8.8: 0.20 · 580 MPa · 36.6 mm² · 8 mm = 34.0 N·m
    const typical = judged(about(24), 'M8', '8.8');
    expect(typical.torqueAtProofNm).toBeCloseTo(33.97, 2);
    expect(typical).toMatchObject({ kind: 'plausible', slips: [] });
    expect(typical.message).toBe('24 N·m is 71 % of the torque at proof load of M8 8.8.');
    expect(judged(about(5.2), 'M8', '8.8').kind).toBe('plausible');
    expect(judged(about(5), 'M8', '8.8').kind).toBe('tooLow');
    expect(judged(about(30.8), 'M8', '8.8').kind).toBe('plausible');
  });

  it('is doubted when only its upper limit goes too far', () => {
    expect(judged(about(32), 'M8', '8.8')).toMatchObject({
      kind: 'tooHigh',
      message:
        'The upper limit of 35.2 N·m is 104 % of the torque at proof load of M8 8.8: it may stretch the bolt for good.',
    });
  });

  it.each([
    ['pound-inches', about(88), 'M8', '8.8', '88 is the lbf·in figure; 10 N·m?'],
    [
      'pound-feet',
      about(110, '[lbf_av].[ft_i]'),
      'M12',
      '8.8',
      '110 is the N·m figure; 81 lbf·ft?',
    ],
    [
      'newton metres',
      about(110, '[lbf_av].[in_i]'),
      'M12',
      '8.8',
      '110 is the N·m figure; 974 lbf·in?',
    ],
    ['kilopond-metres', about(2.5), 'M8', '8.8', '2.5 is the kgf·m figure; 25 N·m?'],
    ['a slipped point', about(2.2), 'M8', '8.8', '2.2: is it 22?'],
    ['a slipped point', about(900), 'M12', '8.8', '900: is it 90?'],
  ])('is explained by %s where these fit', (_, spec, thread, strength, text) => {
    expect(judged(spec, thread, strength).slips.map((slip) => slip.text)).toContain(text);
  });

  it('names the likeliest slip to the writer', () => {
    expect(judged(about(2.4), 'M8', '8.8').message).toBe(
      '2.4 N·m is 7 % of the torque at proof load of M8 8.8: low for a screwed joint. 2.4: is it 24?',
    );
  });

  it('is compared in the unit of the sheet, on unified threads as on metric', () => {
    expect(judged(about(30, '[lbf_av].[ft_i]'), '3/8-16', 'grade 5')).toMatchObject({
      kind: 'plausible',
      message: '30 lbf·ft is 73 % of the torque at proof load of 3/8-16 grade 5.',
    });
  });

  it('with one limit is compared by that', () => {
    expect(judged({ kind: 'atLeast', unit: 'N.m', lower: 20 }, 'M8', '8.8').kind).toBe('plausible');
    expect(judged({ kind: 'atMost', unit: 'N.m', upper: 50 }, 'M8', '8.8').kind).toBe('tooHigh');
  });

  it.each<[string, Specification, string, string, string]>([
    ['it is no torque', about(90, 'deg'), 'M8', '8.8', 'wrongQuantity'],
    ['there is no figure', { kind: 'noFigure', unit: 'N.m' }, 'M8', '8.8', 'noFigure'],
    ['it is no number', about(Number.NaN), 'M8', '8.8', 'outOfDomain'],
    ['the thread is unknown', about(24), 'M13', '8.8', 'pitchMissing'],
    ['the strength is unknown', about(24), 'M8', 'hard', 'unknownStrength'],
  ])('is not compared when %s', (_, spec, thread, strength, code) => {
    expect(plausibility(spec, thread, strength)).toMatchObject({ ok: false, error: { code } });
  });

  it('is doubted one way or the other as it moves a hundredfold', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('M5', 'M8', 'M10x1.25', 'M14', '3/8-16'),
        fc.constantFrom('8.8', '10.9', '12.9'),
        fc.double({ min: 0.2, max: 0.85, noNaN: true }),
        (thread, strength, part) => {
          const torqueNm = part * judged(about(1), thread, strength).torqueAtProofNm;
          expect(judged(about(torqueNm), thread, strength).kind).toBe('plausible');
          const high = judged(about(torqueNm * 100), thread, strength);
          const low = judged(about(torqueNm / 100), thread, strength);
          expect([low.kind, high.kind]).toEqual(['tooLow', 'tooHigh']);
          expect(low.slips.some(({ kind }) => kind === 'slippedDecimal')).toBe(true);
          expect(high.slips.some(({ kind }) => kind === 'slippedDecimal')).toBe(true);
        },
      ),
    );
  });

  it('gives an answer or a reason, whatever was typed', () => {
    fc.assert(
      fc.property(
        fc.double(),
        fc.constantFrom(...unitSchema.options),
        fc.oneof(fc.string(), fc.constantFrom('M8', '3/8-16')),
        fc.oneof(fc.string(), fc.constantFrom('8.8', '5')),
        (figure, unit, thread, strength) => {
          const result = plausibility({ kind: 'atMost', unit, upper: figure }, thread, strength);
          if (!result.ok) {
            expect(result.error.message).not.toBe('');
            return;
          }
          expect(result.value.percent).toSatisfy(Number.isFinite);
          expect(result.value.message).not.toMatch(/NaN|Infinity|undefined/);
        },
      ),
      { numRuns: 1000 },
    );
  });
});
