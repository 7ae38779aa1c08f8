import type { DeviationKind } from '@/lib/job';
import { kindWords } from '@/lib/ledger/step-ends';
import { toCanonical, formatDecimal, formatWindow, unitFacts, type Unit } from '@/lib/quantity';
import { decimalPlaces } from '@/lib/quantity';
import type { Followed, MeasuredBeside, Place } from '@/lib/review';

export { kindWords };
export type { DeviationKind };

export const decisionWords = {
  accepted: 'Accepted',
  acceptedRecheckDue: 'Accepted, re-check due',
  rework: 'Sent back to rework',
} as const;

export const followedWords: Readonly<Record<Followed, string>> = {
  doneAgain: 'done again',
  leftOut: 'left out',
  reopenedAgain: 'opened again',
  stillOpen: 'still open',
};

/** "4. Drain the coolant"; a step that the sheet no longer has is told by its title alone. */
export const stepWords = ({
  stepNumber,
  stepTitle,
}: Pick<Place, 'stepNumber' | 'stepTitle'>): string =>
  stepNumber > 0 ? `${stepNumber}. ${stepTitle}` : stepTitle;

/** "19.8–24.2 N·m", "at most 0.5 mm", "no figure": what was asked, in the unit of the sheet. */
export const askedWords = ({
  lower,
  upper,
  unit,
}: Pick<MeasuredBeside, 'lower' | 'upper' | 'unit'>) =>
  formatWindow(
    {
      ...(lower !== undefined && { lower: toCanonical(lower, unit) }),
      ...(upper !== undefined && { upper: toCanonical(upper, unit) }),
    },
    unit,
  );

/** A value of the unit as it was given, at most three places: "18.5 N·m". */
export const valueWords = (value: number, unit: Unit): string =>
  `${formatDecimal(value, decimalPlaces(value, 3))} ${unitFacts[unit].symbol}`;
