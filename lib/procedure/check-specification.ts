import { checkSpecification } from '../fastening/check-specification';
import type { Fault as FigureFault } from '../fastening/fault';
import { specificationQuantity, type Specification } from '../fastening/specification';
import { unitFacts, type Quantity } from '../quantity';
import { doubt, fault, type Finding } from './fault';

/** What is found about a figure, told of where it stands in the revision. */
export const findingAt = (
  where: string,
  what: string,
  { severity, message }: FigureFault,
): Finding => (severity === 'wrong' ? fault : doubt)(where, `${what}: ${message}`);

/** What an ask wants: whether it makes sense by itself and, where it must, is of a certain quantity. */
export const specificationFindings = (
  where: string,
  what: string,
  spec: Specification,
  mustBe?: Quantity,
): readonly Finding[] => {
  const is = specificationQuantity(spec);
  return mustBe !== undefined && is !== mustBe
    ? [
        fault(
          where,
          `${what}: “${unitFacts[spec.unit].symbol}” is a unit of ${is}, not of ${mustBe}.`,
        ),
      ]
    : checkSpecification(spec).map((found) => findingAt(where, what, found));
};
