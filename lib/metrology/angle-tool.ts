import type { TorqueTool } from '../shop';
import { calibrationHoldsUntil } from './calibration';
import { calibrationRefusal } from './choose-tool';

/** A tool that can prove an angle, and how far that may be off. */
export interface AngleTool {
  readonly tool: TorqueTool;
  /** k = 2, degrees. */
  readonly expandedDeg: number;
}

/**
 * The tool that is best for a tightening angle on a day ("2026-03-31"): its certificate says how far its angle may be
 * off, and its calibration holds by date and by cycles. Undefined where the shop has none.
 */
export const bestAngleTool = (
  tools: readonly TorqueTool[],
  on: string,
  cyclesOf: (toolId: string) => number,
): AngleTool | undefined =>
  tools
    .flatMap((tool): readonly AngleTool[] => {
      const until = calibrationHoldsUntil(tool);
      const holds =
        until.ok &&
        calibrationRefusal(tool, until.value, { on, cycles: cyclesOf(tool.id) }) === undefined;
      return tool.expandedAngleDeg === undefined || !holds
        ? []
        : [{ tool, expandedDeg: tool.expandedAngleDeg }];
    })
    .sort((a, b) => a.expandedDeg - b.expandedDeg)[0];
