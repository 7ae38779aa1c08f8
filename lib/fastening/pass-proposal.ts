import type { Pass } from '../procedure/revision';
import type { Specification } from './specification';

/** A pass as a writer may take it over, and how it walks: in the tightening order, or once round as a check. */
export interface ProposedPass {
  readonly pass: Pass;
  readonly percent: number;
  readonly walk: 'tighteningOrder' | 'onceRound';
}

const rounds = [
  { id: 'snug', stage: 'snug', percent: 30, walk: 'tighteningOrder' },
  { id: 'intermediate', stage: 'intermediate', percent: 70, walk: 'tighteningOrder' },
  { id: 'full', stage: 'intermediate', percent: 100, walk: 'tighteningOrder' },
  { id: 'check-round', stage: 'final', percent: 100, walk: 'onceRound' },
] as const;

/**
 * 30, 70 and 100 % of a final torque, then a check round at 100 % (ASME PCC-1, from memory: 20–30, 50–70, 100 %).
 * Only the check round makes the group final. A proposal for the writer where the sheet gives no passes. Part torques are rounded to three digits.
 */
export const proposePasses = (finalTorque: Specification): readonly ProposedPass[] =>
  rounds.map(({ id, stage, percent, walk }) => ({
    pass: {
      id,
      stage,
      tightening:
        finalTorque.kind === 'noFigure'
          ? { kind: 'byFeel' }
          : { kind: 'torque', torque: partOf(finalTorque, percent / 100) },
    },
    percent,
    walk,
  }));

/** A part of a specification: its limits shrink with it. */
const partOf = (spec: Specification, part: number): Specification => {
  const scaled = (value: number): number =>
    part === 1 ? value : Number((value * part).toPrecision(3));
  switch (spec.kind) {
    case 'target':
      return {
        ...spec,
        target: scaled(spec.target),
        tolerance:
          spec.tolerance.in === 'percent'
            ? spec.tolerance
            : {
                in: 'unit',
                plus: scaled(spec.tolerance.plus),
                minus: scaled(spec.tolerance.minus),
              },
      };
    case 'range':
      return { ...spec, lower: scaled(spec.lower), upper: scaled(spec.upper) };
    case 'atLeast':
      return { ...spec, lower: scaled(spec.lower) };
    case 'atMost':
      return { ...spec, upper: scaled(spec.upper) };
    case 'noFigure':
      return spec;
  }
};
