import { describe, expect, it } from 'vitest';
import { proposePasses } from '@/lib/fastening/pass-proposal';
import { passSchema } from '@/lib/procedure';

describe('the proposed passes', () => {
  it('go over 30 and 70 to 100 percent, then once round as a check', () => {
    const passes = proposePasses({
      kind: 'target',
      unit: 'N.m',
      target: 110,
      tolerance: { in: 'unit', plus: 10, minus: 5 },
    });
    expect(passes.map(({ pass, percent, walk }) => [pass.id, pass.stage, percent, walk])).toEqual([
      ['snug', 'snug', 30, 'tighteningOrder'],
      ['intermediate', 'intermediate', 70, 'tighteningOrder'],
      ['full', 'intermediate', 100, 'tighteningOrder'],
      ['check-round', 'final', 100, 'onceRound'],
    ]);
    expect(passes[1]?.pass.tightening).toEqual({
      kind: 'torque',
      torque: {
        kind: 'target',
        unit: 'N.m',
        target: 77,
        tolerance: { in: 'unit', plus: 7, minus: 3.5 },
      },
    });
  });

  it('leave the final torque as the sheet has it', () => {
    const finalTorque = {
      kind: 'range',
      unit: '[lbf_av].[ft_i]',
      lower: 88.25,
      upper: 97.75,
    } as const;
    expect(proposePasses(finalTorque)[2]?.pass.tightening).toEqual({
      kind: 'torque',
      torque: finalTorque,
    });
    expect(proposePasses(finalTorque)[0]?.pass.tightening).toEqual({
      kind: 'torque',
      torque: { ...finalTorque, lower: 26.5, upper: 29.3 },
    });
  });

  it('keep a percentage as it is and scale one-sided limits', () => {
    const tolerance = { in: 'percent', plus: 10, minus: 10 } as const;
    const [snug] = proposePasses({ kind: 'target', unit: 'N.m', target: 50, tolerance });
    expect(snug?.pass.tightening).toMatchObject({ torque: { target: 15, tolerance } });
    expect(
      proposePasses({ kind: 'atLeast', unit: 'N.m', lower: 90 })[0]?.pass.tightening,
    ).toMatchObject({ torque: { lower: 27 } });
    expect(
      proposePasses({ kind: 'atMost', unit: 'N.m', upper: 90 })[1]?.pass.tightening,
    ).toMatchObject({ torque: { upper: 63 } });
  });

  it('are by feel where there is no figure to take parts of', () => {
    for (const { pass } of proposePasses({ kind: 'noFigure', unit: 'N.m' })) {
      expect(pass.tightening).toEqual({ kind: 'byFeel' });
    }
  });

  it('make the group final by the check round alone', () => {
    const passes = proposePasses({ kind: 'atMost', unit: 'N.m', upper: 12 });
    expect(passes.filter(({ pass }) => pass.stage === 'final').map(({ walk }) => walk)).toEqual([
      'onceRound',
    ]);
  });

  it('are valid passes of a procedure', () => {
    for (const { pass } of proposePasses({ kind: 'atMost', unit: 'N.m', upper: 12 })) {
      expect(passSchema.parse(pass)).toEqual(pass);
    }
  });
});
