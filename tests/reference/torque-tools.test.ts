import { describe, it } from 'vitest';
import { classLimitPercent, toolUncertainty, usualInterval } from '@/lib/metrology';
import type { TorqueTool } from '@/lib/shop';
import { source } from './record';

const iso6789 = source('ISO 6789-1:2017, class limit ±4 % and recalibration', 'printed');
const iso6789Memory = source('ISO 6789-1:2017, class limit ±6 % up to 10 N·m', 'from memory');
const jcgm100 = source('JCGM 100:2008 §4.3.7 and §5.1.2, worked by hand', 'computed');

const tool: TorqueTool = {
  id: 'tw',
  name: 'Wrench',
  kind: 'click',
  driveIn: '1/2',
  lowerNm: 20,
  upperNm: 100,
  resolutionNm: 0.5,
  calibration: { on: '2026-01-01', intervalMonths: 12, intervalCycles: 5000 },
};

describe('torque tools agree with ISO 6789-1', () => {
  it('in the permissible deviation', () => {
    iso6789.number('above 10 N·m', classLimitPercent(tool), 4, { relative: 0 });
    iso6789Memory.number('up to 10 N·m', classLimitPercent({ ...tool, upperNm: 10 }), 6, {
      relative: 0,
    });
  });

  it('in when to calibrate again', () => {
    iso6789.exactly('interval', usualInterval, { months: 12, cycles: 5000 });
  });
});

describe('uncertainties agree with JCGM 100', () => {
  const expanded = (of: TorqueTool, torqueNm: number): number => {
    const result = toolUncertainty(of, torqueNm);
    return result.ok ? result.value.expandedNm : Number.NaN;
  };

  it('for rectangular parts', () => {
    // 100 N·m: ±4 N·m gives 2.309401, ±0.25 N·m gives 0.144338; together 2.313907, twice 4.627815.
    jcgm100.number('class limit', expanded(tool, 100), 4.627815, { relative: 1e-6 });
  });

  it('for a certificate with k = 2', () => {
    // 50 N·m: 2 % at k = 2 gives 0.5, ±0.25 N·m gives 0.144338; together 0.520416, twice 1.040833.
    const certified = { ...tool, calibration: { ...tool.calibration, expandedPercent: 2 } };
    jcgm100.number('certificate', expanded(certified, 50), 1.040833, { relative: 1e-6 });
  });
});
