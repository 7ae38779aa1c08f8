import { zoneRules, type ZoneRule } from '@/lib/statistics';

/** How a rule of the chart is told. */
export const ruleWords: Readonly<Record<ZoneRule, string>> = {
  beyondThree: 'beyond three sigma',
  twoOfThree: 'two of three beyond two sigma',
  fourOfFive: 'four of five beyond one sigma',
  eightInARow: 'eight in a row on one side',
};

/** The figure that stands beside a point for the rule, from 1. */
export const ruleFigure = (rule: ZoneRule): number => zoneRules.indexOf(rule) + 1;
