import { specificationQuantity, type Specification } from '../fastening/specification';
import { unitFacts, type Quantity } from '../quantity';
import { fault, type Fault } from './fault';

const sense = (spec: Specification): string | undefined => {
  switch (spec.kind) {
    case 'target':
      return spec.tolerance.plus === 0 && spec.tolerance.minus === 0
        ? 'a target without any tolerance can hardly be met: give the window of the sheet'
        : undefined;
    case 'range':
      return spec.lower < spec.upper ? undefined : 'the lower limit is not below the upper one';
    case 'atLeast':
    case 'atMost':
    case 'noFigure':
      return undefined;
  }
};

const figures = (spec: Specification): readonly number[] => {
  switch (spec.kind) {
    case 'target':
      return [spec.target];
    case 'range':
      return [spec.lower, spec.upper];
    case 'atLeast':
      return [spec.lower];
    case 'atMost':
      return [spec.upper];
    case 'noFigure':
      return [];
  }
};

/** Of these nothing below zero can be asked. */
const neverNegative: readonly Quantity[] = ['torque', 'angle', 'volume'];

/** Whether a specification makes sense and, where it must, is of a certain quantity. */
export const checkSpecification = (
  where: string,
  what: string,
  spec: Specification,
  mustBe?: Quantity,
): readonly Fault[] => {
  const is = specificationQuantity(spec);
  if (mustBe !== undefined && is !== mustBe)
    return [
      fault(
        where,
        `${what}: “${unitFacts[spec.unit].symbol}” is a unit of ${is}, not of ${mustBe}.`,
      ),
    ];
  const wrong =
    neverNegative.includes(is) && figures(spec).some((figure) => figure < 0)
      ? `${is} is never below zero`
      : sense(spec);
  return wrong === undefined ? [] : [fault(where, `${what}: ${wrong}.`)];
};
