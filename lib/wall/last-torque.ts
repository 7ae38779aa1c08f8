import { askedGroup, type JobState, type Reading } from '../job';
import { withUnit } from '../ledger/words';
import { askOf, fastenerName, fastenerOf, stepOf } from '../procedure';
import type { JobCard } from './card';

const isTorque = (state: JobState, { step, ask }: Reading): boolean => {
  const found = stepOf(state.revision, step);
  const asked = found && askOf(found, ask);
  return asked?.kind === 'value' && asked.of.kind === 'pass' && asked.of.measure === 'torque';
};

const nameOf = ({ revision }: JobState, { step, ask, fastener }: Reading): string => {
  const one = fastener === undefined ? undefined : fastenerOf(revision, fastener);
  return one === undefined
    ? (askedGroup(revision, step, ask)?.name ?? '')
    : fastenerName(one.group, one.fastener);
};

/** The last tightening torque that stands, and what is made of it. */
export const lastTorque = (state: JobState): JobCard['lastTorque'] => {
  const last = state.readings.findLast(
    (reading) =>
      (reading.status === 'provisional' || reading.status === 'counted') &&
      isTorque(state, reading),
  );
  return last === undefined
    ? undefined
    : {
        of: nameOf(state, last),
        value: withUnit(last.value, last.unit),
        verdict: last.verdict,
        at: last.at,
      };
};
