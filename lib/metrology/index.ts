export * from './verdict';
export { explainVerdict, type Explanation } from './explain';
export { implausible, type Implausible } from './implausible';
export {
  decide,
  guardBands,
  type Conclusion,
  type Decision,
  type DecisionError,
  type GuardBand,
  type Outcome,
} from './decision';
export { addMonths, type DayError } from './calendar-day';
export {
  calibrationHoldsUntil,
  cyclesSinceCalibration,
  usualInterval,
  type ToolUse,
} from './calibration';
export { bestAngleTool, type AngleTool } from './angle-tool';
export { usableRange } from './tool-range';
export {
  classLimitPercent,
  toolUncertainty,
  type ToolUncertainty,
  type ToolUncertaintyError,
  type UncertaintyPart,
} from './tool-uncertainty';
export {
  admitTool,
  chooseTool,
  type ToolChoice,
  type ToolNeed,
  type ToolRefusal,
  type ToolUseNow,
  type UsableTool,
} from './choose-tool';
