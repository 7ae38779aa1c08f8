import { describe, expect, test } from 'vitest';
import { demoProcedures } from '@/demo';
import type { Specification } from '@/lib/fastening';
import { specificationSchema } from '@/lib/fastening';
import { askSchema, effectSchema, tighteningSchema } from '@/lib/procedure';
import { quantities, quantityOf } from '@/lib/quantity';

/** Everything that a procedure can express occurs somewhere in the demo, so that the demo shows all of it. */
const steps = demoProcedures.flatMap((revision) => revision.steps);
const effects = steps.flatMap((step) => step.effects);
const asks = steps.flatMap((step) => step.asks);
const values = asks.flatMap((ask) => (ask.kind === 'value' ? [ask.of] : []));
const groups = demoProcedures.flatMap((revision) => revision.groups);
const fasteners = groups.flatMap((group) => group.fasteners);
const passes = groups.flatMap((group) => group.passes);
const parts = demoProcedures.flatMap((revision) => revision.parts);
const fluids = demoProcedures.flatMap((revision) => revision.fluids);
const consumables = demoProcedures.flatMap((revision) => revision.consumables);
const drawings = demoProcedures.flatMap((revision) => revision.drawings);
const kit = demoProcedures.flatMap((revision) => revision.kit);

const specs: Specification[] = [
  ...values.flatMap((of) => (of.kind === 'pass' ? [] : [of.spec])),
  ...passes.flatMap(({ tightening }) =>
    tightening.kind === 'torque'
      ? [tightening.torque]
      : tightening.kind === 'torqueAngle'
        ? [tightening.snugTorque, tightening.angle]
        : [],
  ),
];

const seen = <T>(all: readonly T[]): Set<T> => new Set(all);

describe('the demo procedures together use', () => {
  test('every kind of effect', () => {
    const kinds = effectSchema.options.map((option) => option.shape.kind.value);
    expect(seen(effects.map(({ kind }) => kind))).toEqual(seen(kinds));
  });

  test('every kind of question', () => {
    const kinds = askSchema.options.map((option) => option.shape.kind.value);
    expect(seen(asks.map(({ kind }) => kind))).toEqual(seen(kinds));
  });

  test('values of passes, of fluids and of other things', () => {
    expect(seen(values.map(({ kind }) => kind))).toEqual(seen(['pass', 'fluid', 'other']));
    const ofPass = values.flatMap((of) => (of.kind === 'pass' ? [of] : []));
    expect(seen(ofPass.map(({ measure }) => measure))).toEqual(
      seen(['torque', 'angle', 'prevailing']),
    );
    expect(seen(ofPass.map(({ each }) => each))).toEqual(seen([true, false]));
    const ofFluid = values.flatMap((of) => (of.kind === 'fluid' ? [of.use] : []));
    expect(seen(ofFluid)).toEqual(seen(['drained', 'spilled', 'filled']));
  });

  test('every kind of specification, with tolerances in percent and in the unit, even and uneven', () => {
    const kinds = specificationSchema.options.map((option) => option.shape.kind.value);
    expect(seen(specs.map(({ kind }) => kind))).toEqual(seen(kinds));
    const tolerances = specs.flatMap((spec) => (spec.kind === 'target' ? [spec.tolerance] : []));
    expect(seen(tolerances.map((tolerance) => tolerance.in))).toEqual(seen(['unit', 'percent']));
    expect(seen(tolerances.map(({ plus, minus }) => plus === minus))).toEqual(seen([true, false]));
  });

  test('every quantity', () => {
    expect(seen(specs.map(({ unit }) => quantityOf(unit)))).toEqual(seen([...quantities]));
  });

  test('torques in newton metres, pound-force feet and pound-force inches', () => {
    const units = specs.filter(({ unit }) => quantityOf(unit) === 'torque').map(({ unit }) => unit);
    expect(seen(units)).toEqual(seen(['N.m', '[lbf_av].[ft_i]', '[lbf_av].[in_i]']));
  });

  test('every kind and stage of tightening', () => {
    const kinds = tighteningSchema.options.map((option) => option.shape.kind.value);
    expect(seen(passes.map(({ tightening }) => tightening.kind))).toEqual(seen(kinds));
    expect(seen(passes.map(({ stage }) => stage))).toEqual(seen(['snug', 'intermediate', 'final']));
  });

  test('every kind of fastener, single-use and not, with length and without, safety-critical and not', () => {
    expect(seen(groups.map(({ noun }) => noun))).toEqual(
      seen(['bolt', 'nut', 'screw', 'stud', 'plug']),
    );
    expect(seen(fasteners.map(({ singleUse }) => singleUse))).toEqual(seen([true, false]));
    expect(seen(fasteners.map(({ lengthMm }) => lengthMm === undefined))).toEqual(
      seen([true, false]),
    );
    expect(seen(groups.map(({ safetyCritical }) => safetyCritical))).toEqual(seen([true, false]));
  });

  test("the sheet's order and the computed one, with several fasteners each", () => {
    const several = groups.filter((group) => group.fasteners.length > 3);
    expect(seen(several.map(({ sheetOrder }) => sheetOrder === undefined))).toEqual(
      seen([true, false]),
    );
  });

  test('parts on the vehicle and from the kit, reusable always, never and as the mechanic says', () => {
    expect(seen(parts.map(({ starts }) => starts))).toEqual(seen(['on', 'off']));
    expect(seen(parts.map(({ reuse }) => reuse))).toEqual(seen(['always', 'ask', 'never']));
    const fits = effects.flatMap((effect) => (effect.kind === 'fits' ? [effect.as] : []));
    expect(seen(fits)).toEqual(seen(['new', 'reused', 'asChosen']));
    const runsIn = effects.flatMap((e) => (e.kind === 'runsIn' ? [e.fasteners] : []));
    expect(seen(runsIn)).toEqual(seen(['same', 'new']));
  });

  test('single kit items and several of a kind', () => {
    expect(seen(kit.map(({ quantity }) => quantity > 1))).toEqual(seen([true, false]));
  });

  test('every kind of consumable, and thread-locker of every strength', () => {
    expect(seen(consumables.map(({ kind }) => kind))).toEqual(
      seen(['threadLocker', 'grease', 'sealant', 'oil', 'cleaner']),
    );
    expect(
      seen(consumables.flatMap((one) => (one.kind === 'threadLocker' ? [one.strength] : []))),
    ).toEqual(seen(['low', 'medium', 'high']));
    const applied = effects.flatMap((e) => (e.kind === 'applies' ? [e.consumable] : []));
    expect(seen(applied)).toEqual(seen(consumables.map(({ id }) => id)));
  });

  test('fluids that may go back and fluids that may not', () => {
    expect(seen(fluids.map(({ mayReturn }) => mayReturn))).toEqual(seen([true, false]));
  });

  test('special tools and common ones', () => {
    const special = demoProcedures.flatMap(({ tools }) => tools.map((tool) => tool.special));
    expect(seen(special)).toEqual(seen([true, false]));
  });

  test('every signal word, and steps without caution', () => {
    const words = steps.flatMap(({ cautions }) => cautions.map(({ signal }) => signal));
    expect(seen(words)).toEqual(seen(['DANGER', 'WARNING', 'CAUTION', 'NOTICE']));
    expect(steps.some(({ cautions }) => cautions.length === 0)).toBe(true);
    expect(steps.some(({ cautions }) => cautions.length > 1)).toBe(true);
  });

  test('one-shot, hand-start, orientation and every word on power tools', () => {
    expect(seen(steps.map(({ oneShot }) => oneShot))).toEqual(seen([true, false]));
    expect(seen(steps.map(({ handStart }) => handStart))).toEqual(seen([true, false]));
    expect(seen(steps.map(({ orientation }) => orientation === undefined))).toEqual(
      seen([true, false]),
    );
    expect(seen(steps.map(({ powerTool }) => powerTool))).toEqual(
      seen(['allowed', 'notAllowed', 'notUsed']),
    );
  });

  test('steps in free order and steps that wait for others', () => {
    expect(seen(steps.map(({ after }) => Math.min(after.length, 2)))).toEqual(seen([0, 1, 2]));
  });

  test('steps with and without a drawing, trays, and lines of every weight', () => {
    expect(seen(steps.map(({ drawing }) => drawing === undefined))).toEqual(seen([true, false]));
    const trays = effects.flatMap((e) => (e.kind === 'takesOff' ? [e.tray === undefined] : []));
    expect(seen(trays)).toEqual(seen([true, false]));
    const weights = drawings.flatMap(({ shapes }) => shapes.map(({ weight }) => weight));
    expect(seen(weights)).toEqual(seen(['outline', 'detail', 'hidden']));
  });
});
