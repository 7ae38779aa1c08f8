import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toleranceInterval, type Specification } from '@/lib/fastening';
import { decisionRuleFor, judgeValue } from '@/lib/job';
import { judge } from '@/lib/metrology';
import { askOf, stepOf, type Revision, type ValueAsk } from '@/lib/procedure';
import { fromCanonical, quantities, quantityOf, unitSchema } from '@/lib/quantity';
import { Bay } from './driver';
import { lidJob } from './lid-procedure';

const valueAsk = (revision: Revision, stepId: string, askId: string): ValueAsk => {
  const step = stepOf(revision, stepId);
  const ask = step && askOf(step, askId);
  if (ask?.kind !== 'value') throw new Error('the example has changed');
  return ask;
};

const job = new Bay(lidJob).state;
const hub = {
  torque: valueAsk(lidJob, 'tighten-hub', 'hub-torque'),
  angle: valueAsk(lidJob, 'tighten-hub', 'hub-angle'),
};
const idler = valueAsk(lidJob, 'tighten-hub', 'idler-torque');

describe('the angle of a safety-critical bolt (85 to 95°)', () => {
  const turned = (value: number, expandedUncertainty?: number) =>
    judgeValue(job, hub.angle, undefined, { value, unit: 'deg' }, expandedUncertainty);

  test('must be proven like its torque', () => {
    expect(turned(90, 2)).toEqual({
      verdict: 'inSpec',
      sentence: '90° is within 85–95°, and stays so with the tool’s ±2.0°.',
    });
    expect(turned(94, 2).verdict).toBe('notProvable');
    expect(turned(98, 2)).toEqual({
      verdict: 'outOfSpec',
      sentence: '98° is above 95°, out of spec by 3°.',
    });
  });

  test('proves nothing with a tool of which nothing is known', () => {
    expect(turned(90)).toEqual({
      verdict: 'notProvable',
      sentence: '90° is within 85–95°, but it is not known how far the tool may be off.',
    });
  });

  test('is stored with its verdict', () => {
    const bay = new Bay(lidJob);
    bay.begin('tighten-hub');
    bay.does({
      type: 'readingTaken',
      step: 'tighten-hub',
      ask: 'hub-angle',
      value: 99,
      unit: 'deg',
    });
    expect(bay.state.readings.at(-1)?.verdict).toBe('outOfSpec');
  });
});

test('an ordinary nut is taken as read, a safety-critical bolt is not', () => {
  expect(decisionRuleFor(lidJob, idler)).toBe('simple');
  expect(decisionRuleFor(lidJob, hub.torque)).toBe('mustProve');
  expect(decisionRuleFor(lidJob, hub.angle)).toBe('mustProve');
});

describe('a value of any quantity', () => {
  const unit = fc.constantFrom(...unitSchema.options);
  const figure = fc.integer({ min: 1, max: 50_000 }).map((n) => n / 100);

  test('is judged by the same rule as a torque, and the verdict is explained in one sentence', () => {
    fc.assert(
      fc.property(unit, figure, figure, figure, (u, lower, width, value) => {
        const spec: Specification = { kind: 'range', unit: u, lower, upper: lower + width };
        const ask: ValueAsk = { kind: 'value', id: 'a', label: 'A', of: { kind: 'other', spec } };
        const told = judgeValue(job, ask, undefined, { value, unit: u }, undefined);
        expect(told.verdict).toBe(
          value >= lower && value <= lower + width ? 'inSpec' : 'outOfSpec',
        );
        expect(told.sentence).toMatch(/^[^.]*(\.\d[^.]*)*\.$/);
      }),
    );
  });

  test('is judged so for every quantity there is', () => {
    expect(new Set(unitSchema.options.map(quantityOf))).toEqual(new Set(quantities));
  });
});

test('a torque or an angle of the hub bolt is judged with the guard band, whatever was read', () => {
  const cases = fc.constantFrom(hub.torque, hub.angle);
  const range = fc.double({ min: 0, max: 200, noNaN: true });
  fc.assert(
    fc.property(cases, range, fc.double({ min: 0, max: 20, noNaN: true }), (ask, value, u) => {
      const spec: Specification =
        ask === hub.angle
          ? { kind: 'range', unit: 'deg', lower: 85, upper: 95 }
          : { kind: 'range', unit: 'N.m', lower: 54, upper: 66 };
      expect(
        judgeValue(
          job,
          ask,
          undefined,
          { value: fromCanonical(value, spec.unit), unit: spec.unit },
          u,
        ).verdict,
      ).toBe(judge(value, toleranceInterval(spec), u, 'mustProve'));
    }),
  );
});
