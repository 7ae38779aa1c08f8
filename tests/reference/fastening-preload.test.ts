import { unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  assemblyPreloadN,
  parseThread,
  preloadByNutFactorN,
  preloadForTorqueN,
  proofLoadN,
  strengthOf,
  torqueByNutFactorNm,
  torqueForPreloadNm,
  type Thread,
} from '@/lib/fastening';
import type { Result } from '@/lib/result';
import { source } from './record';

const vdiPrinted = source(
  'VDI 2230 ed. 2001, FM and MA at µ = 0.12 (fine), FM at µ = 0.14',
  'printed',
);
const vdiComputed = source('VDI 2230 ed. 2001 form, MA at µ = 0.12 (coarse)', 'computed');
const shortForm = source('T = K · F · d at 75 % of proof, K = 0.20 (Shigley)', 'computed');
const shigley = source('Shigley, example 8-3 (¾-16 UNF)', 'from memory');
const grade5 = source('⅜-16 grade 5 preload and torques at K 0.20 and 0.15', 'printed');
const mathjs = source('mathjs units: lbf and in to N·m', 'computed');

const sure = <T>(result: Result<T, { readonly message: string }>): T => {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const thread = (text: string): Thread => sure(parseThread(text));
const strength = (name: string, on: string) => sure(strengthOf(name, thread(on)));
const LBF_N = 4.4482216152605;
const LBF_IN_NM = 0.1129848290276167;

/** The torque that brings a bolt to 90 % of its yield strength. */
const assembly = (name: string, on: string, friction: number) => {
  const preloadN = sure(assemblyPreloadN(thread(on), strength(name, on), friction));
  const joint = { thread: thread(on), friction: { thread: friction, head: friction } };
  return { preloadN, torqueNm: sure(torqueForPreloadNm(preloadN, joint)), joint };
};

describe('the long form', () => {
  it('reproduces the published preloads and torques of fine threads', () => {
    const rows = [
      ['M8x1', 20.2, 26.1, 29.7, 38.3],
      ['M10x1.25', 31.6, 51, 46.4, 75],
      ['M12x1.25', 48.0, 90, 70.5, 133],
      ['M14x1.5', 64.8, 142, 95.2, 209],
    ] as const;
    for (const [on, force88, torque88, force109, torque109] of rows) {
      const golden = { relative: 0.01 };
      const [at88, at109] = [assembly('8.8', on, 0.12), assembly('10.9', on, 0.12)];
      vdiPrinted.number(`FM ${on} 8.8`, at88.preloadN / 1000, force88, golden);
      vdiPrinted.number(`MA ${on} 8.8`, at88.torqueNm, torque88, golden);
      vdiPrinted.number(`FM ${on} 10.9`, at109.preloadN / 1000, force109, golden);
      vdiPrinted.number(`MA ${on} 10.9`, at109.torqueNm, torque109, golden);
    }
    const m12 = assembly('8.8', 'M12', 0.14).preloadN / 1000;
    vdiPrinted.number('FM,max M12 8.8, µ 0.14', m12, 41.9, { relative: 0.01 });
    expect.hasAssertions();
  });

  it('gives the torques of coarse threads', () => {
    const rows = [
      ['M6', 10.1, 14.9],
      ['M8', 24.6, 36.1],
      ['M10', 48.5, 71.2],
      ['M12', 83.6, 122.8],
      ['M14', 133.6, 196.2],
    ] as const;
    for (const [on, torque88, torque109] of rows) {
      const golden = { relative: 0.006 };
      vdiComputed.number(`MA ${on} 8.8`, assembly('8.8', on, 0.12).torqueNm, torque88, golden);
      vdiComputed.number(`MA ${on} 10.9`, assembly('10.9', on, 0.12).torqueNm, torque109, golden);
    }
    expect.hasAssertions();
  });

  it('agrees with the power screw example of Shigley', () => {
    const at = thread('3/4-16 UNF');
    // Collar of 1.25 · d: a bearing ring with that mean.
    const bearing = {
      outerMm: 1.4 * at.diameterMm,
      holeMm: 1.1 * at.diameterMm,
      source: 'example',
    };
    const joint = { thread: at, friction: { thread: 0.15, head: 0.15 }, bearing };
    const preloadN = 25_000 * LBF_N;
    const long = sure(torqueForPreloadNm(preloadN, joint)) / LBF_IN_NM;
    const short = sure(torqueByNutFactorNm(preloadN, 0.2, at)) / LBF_IN_NM;
    shigley.number('dm, in', at.pitchDiameterMm / 25.4, 0.7093, { absolute: 0.0002 });
    shigley.number('long form, lbf·in', long, 3551, { relative: 0.001 });
    shigley.number('short form, lbf·in', short, 3750, { relative: 1e-9 });
    expect(sure(preloadForTorqueN(long * LBF_IN_NM, joint)) / LBF_N).toBeCloseTo(25_000, 6);
  });
});

describe('the short form', () => {
  it('gives the torques at three quarters of the proof load', () => {
    const rows = [
      ['M6', 10.5, 15.0],
      ['M8', 25.5, 36.4],
      ['M10', 50.5, 72.2],
      ['M12', 88.0, 125.9],
      ['M14', 140.1, 200.5],
    ] as const;
    for (const [on, torque88, torque109] of rows) {
      for (const [name, published] of [
        ['8.8', torque88],
        ['10.9', torque109],
      ] as const) {
        const preloadN = 0.75 * proofLoadN(thread(on), strength(name, on));
        const torqueNm = sure(torqueByNutFactorNm(preloadN, 0.2, thread(on)));
        shortForm.number(`${on} ${name}`, torqueNm, published, { relative: 0.006 });
      }
    }
    expect.hasAssertions();
  });

  it('gives the preload and torques of a grade 5 bolt', () => {
    const at = thread('3/8-16');
    const preloadN = 0.75 * proofLoadN(at, strength('grade 5', '3/8-16'));
    const torque = (k: number) => sure(torqueByNutFactorNm(preloadN, k, at)) / LBF_IN_NM / 12;
    grade5.number('preload, lbf', preloadN / LBF_N, 4940, { relative: 0.001 });
    grade5.number('K 0.20, lbf·ft', torque(0.2), 30, { absolute: 1 });
    grade5.number('K 0.15, lbf·ft', torque(0.15), 23, { absolute: 0.5 });
    expect.hasAssertions();
  });

  it('agrees with a units library on the way from pounds and inches', () => {
    const torqueNm = sure(torqueByNutFactorNm(4940 * LBF_N, 0.2, thread('3/8-16')));
    const theirs = unit(0.2 * 4940 * 0.375, 'lbf in').toNumber('N m');
    mathjs.number('0.2 · 4940 lbf · 0.375 in', torqueNm, theirs, { relative: 1e-12 });
    expect(sure(preloadByNutFactorN(torqueNm, 0.2, thread('3/8-16'))) / LBF_N).toBeCloseTo(4940, 9);
  });
});
