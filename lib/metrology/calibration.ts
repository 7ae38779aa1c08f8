import type { Result } from '../result';
import type { TorqueTool } from '../shop';
import { addMonths, type DayError } from './calendar-day';

/** What ISO 6789-1:2017 recommends where the maker of the tool says nothing: whichever comes first. */
export const usualInterval = { months: 12, cycles: 5000 } as const;

/** The last day on which the calibration holds, the same day of the month as it was made (common practice). */
export const calibrationHoldsUntil = (tool: TorqueTool): Result<string, DayError> =>
  addMonths(tool.calibration.on, tool.calibration.intervalMonths);

/** One use of a tool, as a reading records it. */
export interface ToolUse {
  readonly tool?: { readonly id: string } | undefined;
  /** RFC 3339 with offset: the day counted is the one that the shop's clock showed. */
  readonly at: string;
  /** How many fasteners one reading stands for; absent: one. */
  readonly fasteners?: number;
}

/**
 * Cycles of a tool since its calibration. Readings taken back or superseded count as well: the tool was used.
 * What was recorded on the day of the calibration counts, since the hour of the calibration is not known.
 */
export const cyclesSinceCalibration = (tool: TorqueTool, uses: Iterable<ToolUse>): number => {
  let cycles = 0;
  for (const use of uses) {
    if (use.tool?.id !== tool.id || use.at.slice(0, 10) < tool.calibration.on) continue;
    const fasteners = use.fasteners ?? 1;
    cycles += Number.isFinite(fasteners) ? Math.max(1, fasteners) : 1;
  }
  return cycles;
};
