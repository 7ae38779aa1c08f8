import { z } from 'zod';
import { quantityOf, toCanonical, unitSchema } from '../quantity';

/** What the maker's sheet asks of one measured value, in the sheet's own unit. */
export const specificationSchema = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('target'),
    unit: unitSchema,
    target: z.number(),
    /** Either as printed (± in the unit) or as percent of the target. */
    tolerance: z.object({
      in: z.enum(['unit', 'percent']),
      plus: z.number().nonnegative(),
      minus: z.number().nonnegative(),
    }),
  }),
  z.object({ kind: z.literal('range'), unit: unitSchema, lower: z.number(), upper: z.number() }),
  z.object({ kind: z.literal('atLeast'), unit: unitSchema, lower: z.number() }),
  z.object({ kind: z.literal('atMost'), unit: unitSchema, upper: z.number() }),
  /** The sheet gives no figure: what is measured is recorded as such, never as in spec. */
  z.object({ kind: z.literal('noFigure'), unit: unitSchema }),
]);
export type Specification = z.infer<typeof specificationSchema>;

/** JCGM 106 tolerance interval in the canonical unit; a missing limit is a one-sided specification. */
export interface ToleranceInterval {
  readonly lower?: number;
  readonly upper?: number;
  readonly target?: number;
}

/** The tolerance interval of a specification, canonical unit; `undefined` where the sheet gives no figure. */
export const toleranceInterval = (spec: Specification): ToleranceInterval | undefined => {
  const canonical = (value: number): number => toCanonical(value, spec.unit);
  switch (spec.kind) {
    case 'target': {
      const scale = spec.tolerance.in === 'percent' ? Math.abs(spec.target) / 100 : 1;
      return {
        lower: canonical(spec.target - spec.tolerance.minus * scale),
        upper: canonical(spec.target + spec.tolerance.plus * scale),
        target: canonical(spec.target),
      };
    }
    case 'range':
      return { lower: canonical(spec.lower), upper: canonical(spec.upper) };
    case 'atLeast':
      return { lower: canonical(spec.lower) };
    case 'atMost':
      return { upper: canonical(spec.upper) };
    case 'noFigure':
      return undefined;
  }
};

export const specificationQuantity = (spec: Specification) => quantityOf(spec.unit);
