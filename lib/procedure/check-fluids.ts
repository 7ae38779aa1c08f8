import { nominal } from '../fastening/check-tightening';
import { specificationQuantity, type Specification } from '../fastening/specification';
import { capacityFor, fillLimits } from '../fluids';
import { formatQuantity, formatWindow, fromCanonical, nameMixUp } from '../quantity';
import { doubt, fault, type Finding } from './fault';
import { partOf, stepsThat } from './lookup';
import type { Fluid, Revision } from './revision';
import type { Effect, ValueAsk } from './step';

type OfFluid = Extract<ValueAsk['of'], { kind: 'fluid' }>;

const asksOf = (revision: Revision, fluid: Fluid, use: OfFluid['use']): readonly OfFluid[] =>
  revision.steps
    .flatMap((step) => step.asks)
    .flatMap((ask) => (ask.kind === 'value' && ask.of.kind === 'fluid' ? [ask.of] : []))
    .filter((of) => of.fluid === fluid.id && of.use === use);

const capacityFindings = (
  revision: Revision,
  where: string,
  { name, capacityL, filter }: Fluid,
): readonly Finding[] => {
  if (filter === undefined) return [];
  const capacity = capacityFor(
    { withFilterL: capacityL, withoutFilterL: filter.capacityWithoutL },
    false,
  );
  return [
    ...(partOf(revision, filter.part) === undefined
      ? [fault(where, `There is no part “${filter.part}”: add it or correct the name.`)]
      : []),
    ...(capacity.ok ? [] : [fault(where, `“${name}”: ${capacity.error.message}`)]),
  ];
};

/** What goes out must go in again, and both be read. */
const readings = (revision: Revision, where: string, fluid: Fluid): readonly Finding[] => {
  const does = (effect: (e: Effect) => boolean) => stepsThat(revision, effect).length > 0;
  if (!does((e) => e.kind === 'drains' && e.fluid === fluid.id)) return [];
  const asks = (use: OfFluid['use']): boolean => asksOf(revision, fluid, use).length > 0;
  return [
    ...(does((e) => e.kind === 'fills' && e.fluid === fluid.id)
      ? []
      : [fault(where, `“${fluid.name}” is drained and no step fills it again.`)]),
    ...(asks('drained')
      ? []
      : [fault(where, `No step asks how much “${fluid.name}” was drained.`)]),
    ...(asks('filled') ? [] : [fault(where, `No step asks how much “${fluid.name}” was filled.`)]),
    ...(asks('returned') && !fluid.mayReturn
      ? [
          doubt(
            where,
            `“${fluid.name}” may not go back, and a step asks how much of it was poured back.`,
          ),
        ]
      : []),
  ];
};

/** A volume to fill that the fluid's own limits do not hold, with the slip that would explain it. */
const fillDoubt = (where: string, fluid: Fluid, spec: Specification): readonly Finding[] => {
  const aim = specificationQuantity(spec) === 'volume' ? nominal(spec) : undefined;
  const least = fluid.filter?.capacityWithoutL ?? fluid.capacityL;
  const limits = {
    lower: fillLimits(least, fluid.toleranceL).lowerL,
    upper: fillLimits(fluid.capacityL, fluid.toleranceL).upperL,
  };
  if (aim === undefined || (aim >= limits.lower && aim <= limits.upper)) return [];
  const slip = nameMixUp(fromCanonical(aim, spec.unit), spec.unit, limits);
  return [
    doubt(
      where,
      `“${fluid.name}” is to be filled to ${formatQuantity(aim, spec.unit)}; ` +
        `its capacity allows ${formatWindow(limits, 'L')}.${slip === undefined ? '' : ` ${slip.text}`}`,
    ),
  ];
};

/** Sense of the fluids: what is drained is filled, both are read, and the figures agree with the capacity. */
export const checkFluids = (revision: Revision): readonly Finding[] =>
  revision.fluids.flatMap((fluid) => {
    const where = `fluids/${fluid.id}`;
    // With what is poured back, what is filled anew is only a part of the capacity.
    const whole = asksOf(revision, fluid, 'returned').length === 0;
    return [
      ...capacityFindings(revision, where, fluid),
      ...readings(revision, where, fluid),
      ...(whole ? asksOf(revision, fluid, 'filled') : []).flatMap(({ spec }) =>
        fillDoubt(where, fluid, spec),
      ),
    ];
  });
