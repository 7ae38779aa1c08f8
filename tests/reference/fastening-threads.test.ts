import { describe, expect, it } from 'vitest';
import { parseThread, proofLoadN, strengthOf, type Strength, type Thread } from '@/lib/fastening';
import { source } from './record';

const iso898Printed = source('ISO 898-1:2013, strengths and least tensile loads', 'printed');
const iso898Area = source('ISO 898-1, stress areas (coarse)', 'printed');
const iso898Fine = source('ISO 898-1 geometry, stress areas (fine)', 'computed');
const iso898Proof = source('ISO 898-1, proof loads Sp · As', 'computed');
const iso724 = source('ISO 724, basic pitch, minor and bore diameters', 'from memory');
const b11 = source('ASME B1.1, stress areas', 'from memory');
const j429 = source('SAE J429, proof, yield and tensile strengths', 'from memory');

const thread = (text: string): Thread => {
  const parsed = parseThread(text);
  if (!parsed.ok) throw new Error(parsed.error.message);
  return parsed.value;
};
const strength = (name: string, on: string): Strength => {
  const found = strengthOf(name, thread(on));
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
};

describe('threads as in the standards', () => {
  it('have the stress areas of the tables', () => {
    const coarse = { M6: 20.1, M8: 36.6, M10: 58.0, M12: 84.3, M14: 115, M16: 157, M20: 245 };
    for (const [name, areaMm2] of Object.entries(coarse)) {
      iso898Area.number(`As of ${name}`, thread(name).stressAreaMm2, areaMm2, { relative: 0.005 });
    }
    const fine = {
      M8x1: 39.2,
      'M10x1.25': 61.2,
      'M12x1.25': 92.1,
      'M12x1.5': 88.1,
      'M14x1.5': 125,
    };
    for (const [name, areaMm2] of Object.entries(fine)) {
      iso898Fine.number(`As of ${name}`, thread(name).stressAreaMm2, areaMm2, { relative: 0.005 });
    }
    expect.hasAssertions();
  });

  it('have the basic diameters of the tables', () => {
    const rows = [
      ['M8', 7.188, 6.466, 6.647],
      ['M10', 9.026, 8.16, 8.376],
      ['M12', 10.863, 9.853, 10.106],
      ['M8x1', 7.35, 6.773, 6.917],
    ] as const;
    for (const [name, d2, d3, bore] of rows) {
      const at = thread(name);
      iso724.number(`d2 of ${name}`, at.pitchDiameterMm, d2, { absolute: 0.001 });
      iso724.number(`d3 of ${name}`, at.minorDiameterMm, d3, { absolute: 0.001 });
      iso724.number(`D1 of ${name}`, at.boreDiameterMm, bore, { absolute: 0.001 });
    }
    expect.hasAssertions();
  });

  it('have the stress areas of the unified tables', () => {
    const squareInches = {
      '#10-24': 0.0175,
      '#10-32': 0.02,
      '1/4-20': 0.0318,
      '1/4-28': 0.0364,
      '5/16-18': 0.0524,
      '3/8-16': 0.0775,
      '3/8-24': 0.0878,
      '1/2-13': 0.1419,
      '1/2-20': 0.1599,
      '3/4-10': 0.334,
      '3/4-16': 0.373,
      '1-8': 0.606,
    };
    for (const [name, areaIn2] of Object.entries(squareInches)) {
      b11.number(`As of ${name}`, thread(name).stressAreaMm2 / 25.4 ** 2, areaIn2, {
        relative: 0.003,
      });
    }
    expect.hasAssertions();
  });
});

describe('strengths as in the standards', () => {
  it('are those of ISO 898-1, with 8.8 weaker up to 16 mm', () => {
    const rows = [
      ['8.8', 'M16', 580, 640, 800],
      ['8.8', 'M20', 600, 660, 830],
      ['10.9', 'M10', 830, 940, 1040],
      ['12.9', 'M10', 970, 1100, 1220],
    ] as const;
    for (const [name, on, proof, yields, tensile] of rows) {
      const at = strength(name, on);
      iso898Printed.exactly(`Sp of ${name} ${on}`, at.proofMpa, proof);
      iso898Printed.exactly(`Rp0.2 of ${name} ${on}`, at.yieldMpa, yields);
      iso898Printed.exactly(`Rm of ${name} ${on}`, at.tensileMpa, tensile);
    }
    iso898Printed.exactly('Sp of 9.8', strength('9.8', 'M10').proofMpa, 650);
    expect.hasAssertions();
  });

  it('give the least tensile and proof loads of the tables', () => {
    const rows = [
      ['M6', 16_100, 20_900, 11_658, 16_683],
      ['M8', 29_200, 38_100, 21_228, 30_378],
      ['M10', 46_400, 60_300, 33_640, 48_140],
      ['M12', 67_400, 87_700, 48_894, 69_969],
      ['M14', 92_000, 120_000, 66_700, 95_450],
    ] as const;
    for (const [name, tensile88, tensile109, proof88, proof109] of rows) {
      const at = thread(name);
      const [s88, s109] = [strength('8.8', name), strength('10.9', name)];
      const least = { relative: 0.006 };
      iso898Printed.number(`${name} 8.8`, s88.tensileMpa * at.stressAreaMm2, tensile88, least);
      iso898Printed.number(`${name} 10.9`, s109.tensileMpa * at.stressAreaMm2, tensile109, least);
      // The loads are of the areas as printed, to three digits.
      iso898Proof.number(`${name} 8.8`, proofLoadN(at, s88), proof88, { relative: 0.005 });
      iso898Proof.number(`${name} 10.9`, proofLoadN(at, s109), proof109, { relative: 0.005 });
    }
    expect.hasAssertions();
  });

  it('are those of SAE J429', () => {
    const rows = [
      ['grade 2', '3/8-16', 55, 57, 74],
      ['grade 5', '3/8-16', 85, 92, 120],
      ['grade 5', '1 1/4-7', 74, 81, 105],
      ['grade 8', '3/8-16', 120, 130, 150],
    ] as const;
    const KSI_MPA = 6.894757;
    for (const [name, on, proof, yields, tensile] of rows) {
      const at = strength(name, on);
      j429.number(`proof ${name} ${on}`, at.proofMpa / KSI_MPA, proof, { relative: 1e-6 });
      j429.number(`yield ${name} ${on}`, at.yieldMpa / KSI_MPA, yields, { relative: 1e-6 });
      j429.number(`tensile ${name} ${on}`, at.tensileMpa / KSI_MPA, tensile, { relative: 1e-6 });
    }
    expect.hasAssertions();
  });
});
