import { formatQuantity, unitFacts, type TorqueUnit } from '../quantity';
import { err, ok, type Result } from '../result';
import type { TorqueTool } from '../shop';
import { dayOf } from './calendar-day';
import { calibrationHoldsUntil } from './calibration';
import { usableRange } from './tool-range';
import { toolUncertainty, type ToolUncertainty } from './tool-uncertainty';

/** What a step needs of a torque tool. */
export interface ToolNeed {
  /** The torque to reach on the tool itself, N·m. */
  readonly torqueNm: number;
  readonly drive?: TorqueTool['driveIn'];
  /** The unit in which the mechanic sets or reads it. */
  readonly unit?: TorqueUnit;
}

/** The day and how often the tool was used since its calibration. */
export interface ToolUseNow {
  /** "2026-03-31". */
  readonly on: string;
  readonly cycles: number;
}

export interface ToolRefusal {
  readonly kind:
    | 'expired'
    | 'cyclesUsedUp'
    | 'calibratedLater'
    | 'belowRange'
    | 'aboveRange'
    | 'wrongDrive'
    | 'wrongUnit'
    | 'measuresNoTorque'
    | 'badData';
  readonly message: string;
}

export interface UsableTool {
  readonly tool: TorqueTool;
  readonly uncertainty: ToolUncertainty;
}

/** Why the calibration of a tool does not hold on a day, after so many cycles; `until` is its last day. */
export const calibrationRefusal = (
  { name, calibration }: TorqueTool,
  until: string,
  { on, cycles }: ToolUseNow,
): ToolRefusal | undefined => {
  if (on < calibration.on)
    return {
      kind: 'calibratedLater',
      message: `${name} is noted as calibrated on ${calibration.on}, after today.`,
    };
  if (on > until)
    return { kind: 'expired', message: `The calibration of ${name} ran out on ${until}.` };
  if (cycles >= calibration.intervalCycles) {
    const used = `${String(cycles)} of ${String(calibration.intervalCycles)} cycles`;
    return { kind: 'cyclesUsedUp', message: `${name} is due for calibration: ${used} used.` };
  }
  return undefined;
};

/**
 * Whether a tool may be used for a step, and its uncertainty there. Refused: a calibration run out by date or by
 * cycles, a torque outside its usable range, another square drive, a scale in other units (N·m where the tool says
 * nothing of its scale), a tool that measures angles.
 */
export const admitTool = (
  tool: TorqueTool,
  need: ToolNeed,
  now: ToolUseNow,
): Result<UsableTool, ToolRefusal> => {
  const refuse = (kind: ToolRefusal['kind'], message: string) => err({ kind, message });
  const today = dayOf(now.on);
  const until = calibrationHoldsUntil(tool);
  if (!today.ok) return refuse('badData', today.error.message);
  if (!until.ok) return refuse('badData', until.error.message);
  if (!Number.isFinite(need.torqueNm) || need.torqueNm <= 0 || !(now.cycles >= 0)) {
    return refuse('badData', 'A torque is above zero, and cycles are a count.');
  }
  const { name } = tool;
  if (tool.kind === 'angle') return refuse('measuresNoTorque', `${name} measures angles only.`);
  const stale = calibrationRefusal(tool, until.value, { on: today.value, cycles: now.cycles });
  if (stale !== undefined) return err(stale);
  if (need.drive !== undefined && need.drive !== tool.driveIn) {
    return refuse(
      'wrongDrive',
      `${name} has a ${tool.driveIn} in drive; ${need.drive} in is needed.`,
    );
  }
  const scale = tool.scale ?? ['N.m'];
  if (need.unit !== undefined && !scale.includes(need.unit)) {
    const marked = scale.map((unit) => unitFacts[unit].symbol).join(' and ');
    return refuse(
      'wrongUnit',
      `${name} is marked in ${marked}, not in ${unitFacts[need.unit].symbol}.`,
    );
  }
  const { lowerNm, upperNm } = usableRange(tool);
  const torque = formatQuantity(need.torqueNm, 'N.m');
  const slack = need.torqueNm * 1e-9;
  if (need.torqueNm < lowerNm - slack) {
    return refuse(
      'belowRange',
      `${torque} is too little for ${name}, good from ${formatQuantity(lowerNm, 'N.m')}.`,
    );
  }
  if (need.torqueNm > upperNm + slack) {
    return refuse(
      'aboveRange',
      `${torque} is too much for ${name}, good to ${formatQuantity(upperNm, 'N.m')}.`,
    );
  }
  const uncertainty = toolUncertainty(tool, need.torqueNm);
  return uncertainty.ok
    ? ok({ tool, uncertainty: uncertainty.value })
    : refuse('badData', uncertainty.error.message);
};

export interface ToolChoice {
  /** The smallest uncertainty first; equal ones in the shop's order. The first is the best. */
  readonly usable: readonly UsableTool[];
  readonly refused: readonly { readonly tool: TorqueTool; readonly why: ToolRefusal }[];
}

/** Sorts the shop's tools for a step: which may be used, the best first, and why not the others. */
export const chooseTool = (
  tools: readonly TorqueTool[],
  need: ToolNeed,
  on: string,
  cyclesOf: (toolId: string) => number,
): ToolChoice => {
  const judged = tools.map((tool) => ({
    tool,
    admitted: admitTool(tool, need, { on, cycles: cyclesOf(tool.id) }),
  }));
  return {
    usable: judged
      .flatMap(({ admitted }) => (admitted.ok ? [admitted.value] : []))
      .sort((a, b) => a.uncertainty.expandedNm - b.uncertainty.expandedNm),
    refused: judged.flatMap(({ tool, admitted }) =>
      admitted.ok ? [] : [{ tool, why: admitted.error }],
    ),
  };
};
