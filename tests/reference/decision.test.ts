import { describe, expect, it } from 'vitest';
import { decide, guardBands, type Decision } from '@/lib/metrology';
import { normalCdf, normalQuantile } from '@/lib/statistics/normal';
import { source } from './record';

const ilac = source('ILAC-G8:09/2019 §4.2.1–4.2.3, outcomes and risks', 'printed');
const ilacTable = source('ILAC-G8:09/2019 table 1, guard bands and risks', 'from memory');
const jcgm = source('JCGM 106:2012 §7, conformance probability', 'from memory');
const computed = source('Normal tail and limits of 120 N·m ± 10 % with U = 4.8 N·m', 'computed');

const decided = (...of: Parameters<typeof decide>): Decision => {
  const result = decide(...of);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

describe('decisions agree with ILAC-G8', () => {
  it('in the four outcomes about the limits', () => {
    const outcome = (value: number) =>
      decided(value, { lower: 108, upper: 132 }, 4.8, 'expanded').outcome;
    ilac.exactly('within the acceptance limits', outcome(113), 'pass');
    ilac.exactly('between acceptance and tolerance limit', outcome(110), 'conditionalPass');
    ilac.exactly('beyond the tolerance limit by less than w', outcome(104), 'conditionalFail');
    ilac.exactly('beyond by more than w', outcome(103), 'fail');
  });

  it('in the risk of false acceptance at the acceptance limit', () => {
    const riskAt = (w: number) => decided(w, { lower: 0 }, 1, 'none').risk;
    ilac.exactly('w = U: below 2.5 %', riskAt(guardBands.expanded) < 0.025, true);
    ilac.number('w = 0: 50 %', riskAt(guardBands.none), 0.5, { relative: 1e-12 });
    ilacTable.exactly('w = 0.83 U: below 5 %', riskAt(guardBands.iso14253Default) < 0.05, true);
    ilacTable.exactly('w = 1.5 U: below 0.16 %', riskAt(1.5) < 0.0016, true);
    ilacTable.exactly('w = 3 U: below 1 ppm', riskAt(3) < 1e-6, true);
    computed.number('w = U: 2.28 %', riskAt(guardBands.expanded), 0.0228, { relative: 3e-3 });
    computed.number('w = 1.645 u: 5 %', riskAt(1.645 / 2), 0.05, { relative: 1e-3 });
  });

  it('in the accepted window of the example', () => {
    const { acceptance } = decided(120, { lower: 108, upper: 132 }, 4.8, 'expanded');
    computed.number('lower', acceptance?.lower ?? Number.NaN, 112.8, { relative: 1e-12 });
    computed.number('upper', acceptance?.upper ?? Number.NaN, 127.2, { relative: 1e-12 });
  });
});

describe('probabilities agree with JCGM 106', () => {
  it('for a single upper limit: the breakdown voltage of a diode', () => {
    const { conformance } = decided(-5.47, { upper: -5.4 }, 2 * 0.05, 'none');
    jcgm.number('Φ(1.40)', conformance, 0.92, { absolute: 0.005 });
  });

  it('for the distances from a limit that give round probabilities', () => {
    const table = [
      [0.8, 0.84],
      [0.9, 1.28],
      [0.95, 1.64],
      [0.99, 2.33],
      [0.999, 3.09],
    ] as const;
    for (const [p, z] of table) {
      jcgm.number(`z for ${String(p)}`, normalQuantile(p), z, { absolute: 0.0051 });
      expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 12);
    }
  });
});
