import { quantityOf, unitFacts } from '../quantity';
import type { Intent } from '../voice/intent';
import type { KioskState } from './state';
import { allWants, currentStep, groupOfAsk, openWants, quantityWanted, type Want } from './wanted';

export type ValueIntent = Extract<Intent, { kind: 'value' }>;

const takesNumber = (want: Want): boolean => want.ask.kind === 'value' || want.ask.kind === 'count';

const fastenerLabel = (state: KioskState, want: Want): string | undefined =>
  want.ask.kind === 'value'
    ? groupOfAsk(state.job, want.ask)?.fasteners.find(({ id }) => id === want.fastener)?.label
    : undefined;

/** Which ask a spoken number answers: the named fastener, the chosen one, else the first that still wants one. */
export const wantFor = (state: KioskState, intent: ValueIntent): Want | string => {
  const step = currentStep(state.job);
  const numbers = allWants(state.job, step).filter(takesNumber);
  if (numbers.length === 0) return 'This step asks for no value';
  if (state.job.steps[step.id]?.status !== 'open')
    return 'This step is done. Say "reopen this step" to measure again';
  const { label, unit } = intent;
  const fits = (want: Want): boolean =>
    unit === undefined ||
    (want.ask.kind === 'value' && quantityWanted(state.job, want.ask) === quantityOf(unit));
  const fitting = numbers.filter(fits);
  if (fitting.length === 0)
    return `Nothing here is measured in ${unit === undefined ? 'that unit' : unitFacts[unit].symbol}`;
  const open = openWants(state.job, step).filter((want) => takesNumber(want) && fits(want));
  const preferOpen = (wants: readonly Want[]): Want | undefined =>
    wants.find((want) => open.some((o) => o.ask === want.ask && o.fastener === want.fastener)) ??
    wants[0];
  if (label !== undefined)
    return (
      preferOpen(fitting.filter((want) => fastenerLabel(state, want) === label)) ??
      `There is no ${label} in this step`
    );
  if (state.chosen !== undefined) {
    const chosen = preferOpen(fitting.filter((want) => want.fastener === state.chosen));
    if (chosen !== undefined) return chosen;
  }
  return (
    open[0] ??
    (fitting.length === 1 && fitting[0] !== undefined
      ? fitting[0]
      : 'All values of this step are in. Name the one to change, for example "bolt three torqued ten"')
  );
};
