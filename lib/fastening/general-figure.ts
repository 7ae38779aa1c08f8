import { err, ok, type Result } from '../result';
import { bearingStressMpa, hexagonBearing } from './bearing';
import type { OutOfDomain } from './domain';
import { requiredEngagementMm, strippingLoadN, type Aluminium } from './engagement';
import { parseThread, type ThreadProblem } from './parse-thread';
import { torqueByNutFactorNm } from './preload';
import { proofLoadN, strengthOf, type StrengthProblem } from './strength';

/** The condition of thread and head, and the least nut factor of it: a bolt that slips better is not overstretched. */
const nutFactor = { dry: 0.2, oiled: 0.15, antiSeize: 0.12 } as const;

/** Of the proof load, for a joint that is opened again (Shigley). */
const REUSABLE = 0.75;

export interface GeneralJoint {
  readonly thread: string;
  readonly strengthClass: string;
  readonly condition: keyof typeof nutFactor;
  /** A joint that somebody's life hangs on gets the maker's value or none. */
  readonly safetyCritical: boolean;
  /** What it is screwed into and how far, where that is softer than the bolt. */
  readonly into?: { readonly part: Aluminium; readonly engagedMm: number };
  /** The part under the head, where that is softer than the bolt. */
  readonly under?: Aluminium;
}

export interface GeneralFigure {
  readonly torqueNm: number;
  /** Stands beside the figure wherever it is shown. */
  readonly heading: typeof GENERAL_GUIDANCE;
  readonly assumptions: readonly string[];
  /** What kept it below the figure for steel, if anything did. */
  readonly limitedBy: 'bolt' | 'threadsInPart' | 'pressureUnderHead';
}

export const GENERAL_GUIDANCE = 'General guidance, not the maker’s value';

export type GeneralFigureProblem =
  | OutOfDomain
  | ThreadProblem
  | StrengthProblem
  | { readonly code: 'switchedOff' | 'safetyCritical'; readonly message: string };

/** Whether the shop wants general figures at all. Off unless it says so. */
export interface GeneralFigureSetting {
  readonly showGeneralFigures?: boolean;
}

/**
 * A torque for a fastener without a figure: T = K · F · d at three quarters of the proof load, less where softer
 * threads or the part under the head would give way first. Guidance only: a reading is never in spec by it.
 */
export const generalFigure = (
  joint: GeneralJoint,
  setting: GeneralFigureSetting = {},
): Result<GeneralFigure, GeneralFigureProblem> => {
  if (setting.showGeneralFigures !== true) {
    return err({ code: 'switchedOff', message: 'This shop does not show general figures.' });
  }
  if (joint.safetyCritical) {
    return err({
      code: 'safetyCritical',
      message: 'A safety-critical joint needs the maker’s value: stop and ask for it.',
    });
  }
  const thread = parseThread(joint.thread);
  if (!thread.ok) return thread;
  const strength = strengthOf(joint.strengthClass, thread.value);
  if (!strength.ok) return strength;

  const factor = nutFactor[joint.condition];
  const assumptions = [
    `At most 75 % of the proof load of ${thread.value.designation} ${strength.value.class} (${strength.value.source}).`,
    `T = K · F · d with K = ${factor.toFixed(2)}: thread and head ${conditionWords[joint.condition]}.`,
  ];
  const loads: { readonly by: GeneralFigure['limitedBy']; readonly preloadN: number }[] = [
    { by: 'bolt', preloadN: REUSABLE * proofLoadN(thread.value, strength.value) },
  ];
  if (joint.into) {
    const { part, engagedMm } = joint.into;
    const needed = requiredEngagementMm(thread.value, strength.value, part);
    if (!needed.ok) return needed;
    const strips = strippingLoadN(thread.value, engagedMm, part);
    if (!strips.ok) return strips;
    loads.push({ by: 'threadsInPart', preloadN: REUSABLE * strips.value });
    assumptions.push(
      `${engagedMm.toFixed(1)} mm screwed into ${part.name} (${part.shearMpa} MPa in shear); ${needed.value.toFixed(1)} mm would hold the bolt to its breaking load.`,
    );
  }
  const bearing = hexagonBearing(thread.value);
  if (joint.under) {
    const perNewton = bearingStressMpa(1, bearing);
    if (!perNewton.ok) return perNewton;
    loads.push({ by: 'pressureUnderHead', preloadN: joint.under.bearingMpa / perNewton.value });
    assumptions.push(
      `A plain hexagon head on ${joint.under.name} without a washer, at most ${joint.under.bearingMpa} MPa.`,
    );
  }
  const least = loads.reduce((a, b) => (b.preloadN < a.preloadN ? b : a));
  const torque = torqueByNutFactorNm(least.preloadN, factor, thread.value);
  if (!torque.ok) return torque;
  assumptions.push(
    limitWords[least.by],
    'Torque sets the preload of one bolt only to about ±25 to 35 %. Look for the maker’s value first.',
  );
  return ok({
    torqueNm: torque.value,
    heading: GENERAL_GUIDANCE,
    assumptions,
    limitedBy: least.by,
  });
};

const conditionWords: Readonly<Record<GeneralJoint['condition'], string>> = {
  dry: 'clean and dry, steel on steel',
  oiled: 'lightly oiled',
  antiSeize: 'with anti-seize',
};

const limitWords: Readonly<Record<GeneralFigure['limitedBy'], string>> = {
  bolt: 'The bolt sets the limit.',
  threadsInPart: 'The threads in the part set the limit, at 75 % of what strips them.',
  pressureUnderHead: 'The part under the head sets the limit.',
};
