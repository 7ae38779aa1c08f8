import { formatQuantity, fromCanonical, nameMixUps, unitFacts, type MixUp } from '../quantity';
import { err, ok, type Result } from '../result';
import { nominal } from './check-tightening';
import { finite, type OutOfDomain } from './domain';
import { parseThread, type ThreadProblem } from './parse-thread';
import { torqueByNutFactorNm } from './preload';
import { specificationQuantity, toleranceInterval, type Specification } from './specification';
import { proofLoadN, strengthOf, type StrengthProblem } from './strength';

/** Dry steel: the most torque that a bolt takes for its preload in usual practice (K of the short form). */
const DRY = 0.2;
/** Least part of the torque at proof load that is still credible for a screwed joint. Common practice, no source. */
const LEAST = 0.15;
/** Where sheets usually lie; a slip that lands here is the likelier one. Common practice, no source. */
const USUAL = { from: 0.3, to: 0.9 } as const;

export interface Plausibility {
  readonly kind: 'plausible' | 'tooLow' | 'tooHigh';
  /** K · Sp · As · d with K = 0.20, N·m. */
  readonly torqueAtProofNm: number;
  /** The figure in percent of it: what the specification aims at, or its upper limit when only that is too high. */
  readonly percent: number;
  /** Slips that would explain the figure, likeliest first. */
  readonly slips: readonly MixUp[];
  /** For the writer, with the likeliest slip. */
  readonly message: string;
}

export type PlausibilityProblem =
  | OutOfDomain
  | ThreadProblem
  | StrengthProblem
  | { readonly code: 'noFigure' | 'wrongQuantity'; readonly message: string };

/**
 * Whether a torque can be meant for this thread and strength: below 15 % or above 100 % of the torque at proof load
 * it is doubted, and unit mix-ups and slipped decimals that would bring it between are named. It doubts a figure,
 * it never replaces the maker's: thread-forming screws, plugs and soft parts have their own reasons to be low.
 */
export const plausibility = (
  spec: Specification,
  thread: string,
  strengthClass: string,
): Result<Plausibility, PlausibilityProblem> => {
  if (specificationQuantity(spec) !== 'torque') {
    return err({ code: 'wrongQuantity', message: 'The specification is not a torque.' });
  }
  const aimed = nominal(spec);
  if (aimed === undefined) {
    return err({ code: 'noFigure', message: 'The sheet gives no torque to compare.' });
  }
  const aim = finite('torque', aimed);
  if (!aim.ok) return aim;
  const parsed = parseThread(thread);
  if (!parsed.ok) return parsed;
  const strength = strengthOf(strengthClass, parsed.value);
  if (!strength.ok) return strength;
  const proof = torqueByNutFactorNm(proofLoadN(parsed.value, strength.value), DRY, parsed.value);
  if (!proof.ok) return proof;

  const most = toleranceInterval(spec)?.upper ?? aim.value;
  const kind =
    Math.max(aim.value, most) > proof.value
      ? 'tooHigh'
      : aim.value < LEAST * proof.value
        ? 'tooLow'
        : 'plausible';
  // Where only the upper limit goes too far, it is the figure to name.
  const figureNm = kind === 'tooHigh' && aim.value <= proof.value ? most : aim.value;
  const percent = finite('percentage', (figureNm / proof.value) * 100);
  if (!percent.ok) return percent;
  const slips = kind === 'plausible' ? [] : explainedBy(aim.value, spec, proof.value);
  return ok({
    kind,
    torqueAtProofNm: proof.value,
    percent: percent.value,
    slips,
    message: sentence(
      kind,
      figureNm === aim.value ? '' : 'The upper limit of ',
      figureNm,
      spec,
      percent.value,
      parsed.value.designation,
      strength.value.class,
      slips,
    ),
  });
};

const explainedBy = (aimNm: number, spec: Specification, proofNm: number): readonly MixUp[] => {
  const limits = { lower: LEAST * proofNm, upper: proofNm };
  const usual = ({ meant }: MixUp): boolean => {
    const part = (meant.value * unitFacts[meant.unit].factor) / proofNm;
    return part >= USUAL.from && part <= USUAL.to;
  };
  const slips = nameMixUps(fromCanonical(aimNm, spec.unit), spec.unit, limits);
  return [...slips.filter(usual), ...slips.filter((slip) => !usual(slip))];
};

const sentence = (
  kind: Plausibility['kind'],
  which: string,
  figureNm: number,
  spec: Specification,
  percent: number,
  thread: string,
  strength: string,
  slips: readonly MixUp[],
): string => {
  const figure = formatQuantity(figureNm, spec.unit);
  const part = percent < 1 ? 'under 1' : percent > 9999 ? 'over 9999' : percent.toFixed(0);
  const compared = `${which}${figure} is ${part} % of the torque at proof load of ${thread} ${strength}`;
  const likeliest = slips[0]?.text;
  return {
    plausible: `${compared}.`,
    tooLow: `${compared}: low for a screwed joint.`,
    tooHigh: `${compared}: it may stretch the bolt for good.`,
  }[kind].concat(likeliest === undefined ? '' : ` ${likeliest}`);
};
