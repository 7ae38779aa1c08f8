import { ok, type Result } from '../result';
import { looseEnds } from '../ledger/ledger';
import { fastenerOf, partOf, stepOf } from '../procedure';
import type { Happening, JobEvent } from './event';
import { refuse } from './refuse';
import type { JobState, Refusal } from './state';

type Happened<T extends Happening['type']> = Extract<Happening, { type: T }>;

/** Something was not as the sheet has it; the mechanic says what. */
export const deviationNoted = (
  state: JobState,
  event: JobEvent,
  { kind, step, reason, part, fastener }: Happened<'deviationNoted'>,
): Result<JobState, Refusal> => {
  if (stepOf(state.revision, step) === undefined)
    return refuse('unknownStep', 'The procedure has no such step: choose one from the list.');
  if (part !== undefined && partOf(state.revision, part) === undefined)
    return refuse('unknownPart', 'The procedure has no such part: choose one from the list.');
  if (fastener !== undefined && fastenerOf(state.revision, fastener) === undefined)
    return refuse('unknownFastener', 'The procedure has no such fastener: choose one shown.');
  const deviation = {
    id: event.id,
    seq: event.seq,
    kind,
    step,
    reason,
    ...(part === undefined ? {} : { part }),
    ...(fastener === undefined ? {} : { fastener }),
    by: event.actor,
    at: event.at,
  };
  return ok({ ...state, deviations: [...state.deviations, deviation] });
};

/** Only a foreman who did no work on the job answers for it. */
const independentForeman = (state: JobState, event: JobEvent): Result<undefined, Refusal> => {
  if (event.role !== 'foreman') return refuse('notForeman', 'This is for a foreman: call one.');
  return state.workers.includes(event.actor)
    ? refuse('ownWork', 'You worked on this job: another foreman must sign.')
    : ok(undefined);
};

/** A foreman's word on a deviation, once. */
export const deviationDecided = (
  state: JobState,
  event: JobEvent,
  happening: Happened<'deviationDecided'>,
): Result<JobState, Refusal> => {
  const may = independentForeman(state, event);
  if (!may.ok) return may;
  const deviation = state.deviations.find(({ id }) => id === happening.deviation);
  if (deviation === undefined)
    return refuse('unknownDeviation', 'There is no such deviation: choose one from the list.');
  if (deviation.decision !== undefined)
    return refuse('alreadyDecided', 'This deviation is decided already.');
  const decision = {
    word: happening.decision,
    by: event.actor,
    reason: happening.reason,
    seq: event.seq,
  };
  return ok({
    ...state,
    deviations: state.deviations.map((one) => (one === deviation ? { ...one, decision } : one)),
  });
};

/** A foreman answers for a loose end as it stands. */
export const looseEndSigned = (
  state: JobState,
  event: JobEvent,
  { looseEnd, mark, reason }: Happened<'looseEndSigned'>,
): Result<JobState, Refusal> => {
  const may = independentForeman(state, event);
  if (!may.ok) return may;
  const now = looseEnds(state).find(({ key }) => key === looseEnd);
  if (now === undefined)
    return refuse('unknownLooseEnd', 'That is no loose end any more: look at the list again.');
  if (now.mark !== mark)
    return refuse('looseEndChanged', 'It has changed meanwhile: look at it again, then sign.');
  if (now.signedBy !== undefined) return refuse('alreadyDecided', 'This is signed already.');
  const signature = { looseEnd, mark, by: event.actor, reason };
  return ok({ ...state, signatures: [...state.signatures, signature] });
};

/** Drops signatures whose loose end changed or went away, and those of a foreman who worked on the job since. */
export const withSignaturesInForce = (state: JobState): JobState => {
  if (state.signatures.length === 0) return state;
  const marks = new Map(looseEnds(state).map(({ key, mark }) => [key, mark]));
  const signatures = state.signatures.filter(
    ({ looseEnd, mark, by }) => marks.get(looseEnd) === mark && !state.workers.includes(by),
  );
  return signatures.length === state.signatures.length ? state : { ...state, signatures };
};
