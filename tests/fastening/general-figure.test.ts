import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aluminium, generalFigure, type GeneralJoint } from '@/lib/fastening';

const on = { showGeneralFigures: true };
const joint: GeneralJoint = {
  thread: 'M8',
  strengthClass: '8.8',
  condition: 'dry',
  safetyCritical: false,
};
const figure = (changes: Partial<GeneralJoint> = {}) => {
  const result = generalFigure({ ...joint, ...changes }, on);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

describe('a general figure', () => {
  it('is not given unless the shop has switched it on', () => {
    for (const setting of [undefined, {}, { showGeneralFigures: false }]) {
      expect(generalFigure(joint, setting)).toEqual({
        ok: false,
        error: { code: 'switchedOff', message: 'This shop does not show general figures.' },
      });
    }
  });

  it('is never given for a safety-critical joint', () => {
    expect(generalFigure({ ...joint, safetyCritical: true }, on)).toMatchObject({
      error: { code: 'safetyCritical' },
    });
  });

  it('says beside itself that it is not the maker’s value, and what it assumes', () => {
    expect(figure()).toMatchObject({
      heading: 'General guidance, not the maker’s value',
      assumptions: [
        'At most 75 % of the proof load of M8 8.8 (ISO 898-1:2013).',
        'T = K · F · d with K = 0.20: thread and head clean and dry, steel on steel.',
        'The bolt sets the limit.',
        'Torque sets the preload of one bolt only to about ±25 to 35 %. Look for the maker’s value first.',
      ],
    });
  });

  it('is that of the short form: M8 8.8 dry 25.5 N·m, M12 10.9 dry 125.9 N·m', () => {
    expect(figure().torqueNm).toBeCloseTo(25.5, 1);
    expect(figure({ thread: 'M12', strengthClass: '10.9' }).torqueNm / 125.9).toBeCloseTo(1, 2);
  });

  it('is lower where the thread slips better', () => {
    const { torqueNm: dry } = figure();
    expect(figure({ condition: 'oiled' }).torqueNm / dry).toBeCloseTo(0.75, 9);
    expect(figure({ condition: 'antiSeize' }).torqueNm / dry).toBeCloseTo(0.6, 9);
  });

  it('is lower where a short thread in aluminium would strip', () => {
    const short = figure({ into: { part: aluminium.cast, engagedMm: 6 } });
    expect(short.limitedBy).toBe('threadsInPart');
    // 0.75 · (6 − 1.25) · 0.897 · 120 · π · 8 · 0.875 = 8 433 N, · 0.20 · 8 mm
    expect(short.torqueNm).toBeCloseTo(13.49, 2);
    expect(short.assumptions).toContain(
      '6.0 mm screwed into cast aluminium (120 MPa in shear); 16.1 mm would hold the bolt to its breaking load.',
    );
    expect(figure({ into: { part: aluminium.cast, engagedMm: 20 } }).limitedBy).toBe('bolt');
  });

  it('is lower where the head would sink into aluminium', () => {
    const soft = figure({ under: aluminium.cast });
    expect(soft.limitedBy).toBe('pressureUnderHead');
    expect(soft.torqueNm).toBeCloseTo(13.64, 2); // 200 MPa · 42.6 mm² · 0.20 · 8 mm
  });

  it.each<[Partial<GeneralJoint>, string]>([
    [{ thread: 'M13' }, 'pitchMissing'],
    [{ strengthClass: 'hard' }, 'unknownStrength'],
    [{ into: { part: aluminium.cast, engagedMm: 0 } }, 'outOfDomain'],
    [{ under: { ...aluminium.cast, bearingMpa: -1 } }, 'outOfDomain'],
  ])('is not made up for %j', (changes, code) => {
    expect(generalFigure({ ...joint, ...changes }, on)).toMatchObject({ error: { code } });
  });

  it('is a torque or a reason, whatever the part', () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), fc.double(), (bearingMpa, shearMpa, engagedMm) => {
        const part = { name: 'some alloy', bearingMpa, shearMpa };
        const result = generalFigure({ ...joint, into: { part, engagedMm }, under: part }, on);
        if (result.ok) {
          expect(result.value.torqueNm).toBeGreaterThanOrEqual(0);
          expect(result.value.torqueNm).toBeLessThanOrEqual(figure().torqueNm);
        } else expect(result.error.code).toBe('outOfDomain');
      }),
    );
  });
});
