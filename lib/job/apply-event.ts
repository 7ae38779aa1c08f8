import { mayClose, unsigned } from '../ledger/ledger';
import { err, ok, unreachable, type Result } from '../result';
import { groupOf, kitItemOf, type Revision } from '../procedure';
import { stopClock } from './clock';
import { changeGroups } from './effects';
import {
  deviationDecided,
  deviationNoted,
  looseEndSigned,
  withSignaturesInForce,
} from './deviation-events';
import { answerGiven, entryWithdrawn, readingTaken } from './entry-events';
import type { Happening, HappeningType, JobEvent } from './event';
import { withVerdictsInForce } from './judge-value';
import { openJob } from './open-job';
import { change, lookup } from './record';
import { refuse } from './refuse';
import { stepReopened } from './rework';
import type { JobState, Refusal } from './state';
import { readyGiven, stepBegun, stepDone, stepLeftOut } from './step-events';

type Happened<T extends Happening['type']> = Extract<Happening, { type: T }>;

/** Who did one of these did work. Looking, holding, calling, deciding and signing are no work. */
const work: ReadonlySet<HappeningType> = new Set<HappeningType>([
  'readyGiven',
  'readingTaken',
  'answerGiven',
  'entryWithdrawn',
  'stepDone',
  'stepLeftOut',
  'stepReopened',
  'fastenersLaid',
  'kitLeftOver',
  'deviationNoted',
]);

const whileHeld: ReadonlySet<HappeningType> = new Set<HappeningType>([
  'jobOpened',
  'jobResumed',
  'foremanCalled',
  'foremanAnswered',
  'jobReassigned',
  'deviationDecided',
  'looseEndSigned',
  'deviationNoted',
  'entryWithdrawn',
]);

const fastenersLaid = (
  state: JobState,
  { group: id, tray }: Happened<'fastenersLaid'>,
): Result<JobState, Refusal> => {
  const group = groupOf(state.revision, id);
  if (group === undefined)
    return refuse('unknownGroup', 'The procedure has no such fasteners: choose from the list.');
  if (!group.fasteners.some((one) => lookup(state.fasteners, one.id)?.stage === 'off'))
    return refuse('unknownFastener', `${group.name}: none of them is off.`);
  const fasteners = changeGroups(state.revision, state.fasteners, [id], (old, fastener) =>
    old.stage === 'off' ? { ...old, lies: { tray, place: fastener.label } } : old,
  );
  return ok({ ...state, fasteners });
};

const kitLeftOver = (
  state: JobState,
  { kitItem: id, count }: Happened<'kitLeftOver'>,
): Result<JobState, Refusal> => {
  const item = kitItemOf(state.revision, id);
  const now = lookup(state.kit, id);
  if (item === undefined || now === undefined)
    return refuse('unknownKitItem', 'The kit has no such item: choose one from its list.');
  const rest = item.quantity - now.used - now.leftOver;
  if (count > rest)
    return refuse('kitExceeded', `${item.name}: only ${rest} can be left over. Count again.`);
  const kit = change(state.kit, id, (old) => ({ ...old, leftOver: old.leftOver + count }));
  return ok({ ...state, kit });
};

const hold = (
  state: JobState,
  event: JobEvent,
  { reason }: Happened<'jobHeld'>,
): Result<JobState, Refusal> =>
  ok({
    ...stopClock(state, event.at),
    phase: 'held',
    hold: { reason, since: event.at, by: event.actor },
  });

const resume = (state: JobState, event: JobEvent): Result<JobState, Refusal> => {
  if (state.phase !== 'held') return refuse('notHeld', 'The job is not on hold: go on.');
  const { hold: _, ...going } = state;
  return ok({ ...going, phase: 'running', clockSince: event.at });
};

const foremanAnswered = (state: JobState, event: JobEvent): Result<JobState, Refusal> => {
  if (event.role !== 'foreman') return refuse('notForeman', 'Only a foreman answers the call.');
  const { foremanCalledAt: _, ...answered } = state;
  return ok({ ...answered, foremanAnswered: { by: event.actor, at: event.at } });
};

const foremanCalled = (state: JobState, event: JobEvent): JobState => {
  const { foremanAnswered: _, ...calling } = state;
  return { ...calling, foremanCalledAt: event.at };
};

const reassigned = (
  state: JobState,
  event: JobEvent,
  { bay, mechanic }: Happened<'jobReassigned'>,
): Result<JobState, Refusal> => {
  if (event.role !== 'foreman')
    return refuse('notForeman', 'Only a foreman moves a job: call one.');
  if (bay === state.bay && mechanic === undefined)
    return refuse('nothingChanged', 'Say where the job goes, or who takes it.');
  return ok({
    ...state,
    bay,
    ...(mechanic === undefined ? {} : { assigned: { mechanic, seq: event.seq } }),
  });
};

const close = (state: JobState, event: JobEvent): Result<JobState, Refusal> => {
  if (!mayClose(state)) {
    const left = unsigned(state).length;
    return refuse(
      'looseEndsOpen',
      `${left} loose ${left === 1 ? 'end is' : 'ends are'} open: settle them or have them signed.`,
    );
  }
  const { foremanCalledAt: _, ...stopped } = stopClock(state, event.at);
  return ok({ ...stopped, phase: 'closed', closedAt: event.at, closedBy: event.actor });
};

const happen = (state: JobState, event: JobEvent): Result<JobState, Refusal> => {
  const { happening } = event;
  switch (happening.type) {
    case 'jobOpened':
      return refuse('alreadyOpened', 'The job is open already: go on with it.');
    case 'stepBegun':
      return stepBegun(state, event, happening);
    case 'readyGiven':
      return readyGiven(state, happening);
    case 'readingTaken':
      return readingTaken(state, event, happening);
    case 'answerGiven':
      return answerGiven(state, event, happening);
    case 'entryWithdrawn':
      return entryWithdrawn(state, happening);
    case 'stepDone':
      return stepDone(state, event, happening);
    case 'stepLeftOut':
      return stepLeftOut(state, event, happening);
    case 'stepReopened':
      return stepReopened(state, event, happening);
    case 'fastenersLaid':
      return fastenersLaid(state, happening);
    case 'kitLeftOver':
      return kitLeftOver(state, happening);
    case 'deviationNoted':
      return deviationNoted(state, event, happening);
    case 'deviationDecided':
      return deviationDecided(state, event, happening);
    case 'looseEndSigned':
      return looseEndSigned(state, event, happening);
    case 'jobHeld':
      return hold(state, event, happening);
    case 'jobResumed':
      return resume(state, event);
    case 'foremanCalled':
      return ok(foremanCalled(state, event));
    case 'foremanAnswered':
      return foremanAnswered(state, event);
    case 'jobReassigned':
      return reassigned(state, event, happening);
    case 'jobClosed':
      return close(state, event);
    default:
      return unreachable(happening);
  }
};

/** After one of these a job may go on at any kiosk. */
const letsGo: ReadonlySet<HappeningType> = new Set<HappeningType>([
  'jobHeld',
  'jobReassigned',
  'jobClosed',
]);

/** Work, but no sign of where the vehicle is worked on: these are also done from afar, or afterwards. */
const fromAnywhere: ReadonlySet<HappeningType> = new Set<HappeningType>([
  'stepReopened',
  'deviationNoted',
]);

/** Where the job is in work after the event. */
const withKiosk = (state: JobState, { happening, device, actor, at, seq }: JobEvent): JobState => {
  const { type } = happening;
  if (letsGo.has(type)) {
    const { atKiosk: _, ...free } = state;
    return free;
  }
  const here = type === 'stepBegun' || (work.has(type) && !fromAnywhere.has(type));
  return here ? { ...state, atKiosk: { device, by: actor, at, seq } } : state;
};

const record = (state: JobState, event: JobEvent): JobState => {
  const worked = work.has(event.happening.type) && !state.workers.includes(event.actor);
  return withSignaturesInForce(
    withVerdictsInForce({
      ...withKiosk(state, event),
      seq: event.seq,
      lastAt: event.at,
      workers: worked ? [...state.workers, event.actor] : state.workers,
    }),
  );
};

/**
 * The state after one more event, or why it is refused; a refused event changes nothing. Pure: the state given is
 * never changed, and the same events always make the same state.
 */
export const applyEvent = (state: JobState, event: JobEvent): Result<JobState, Refusal> => {
  if (event.job !== state.job) return refuse('wrongJob', 'This belongs to another job.');
  if (event.seq !== state.seq + 1)
    return refuse('sequence', 'The job has gone on meanwhile: load it again.');
  if (state.phase === 'closed') return refuse('closed', 'The job is closed.');
  if (state.phase === 'held' && !whileHeld.has(event.happening.type))
    return refuse('held', 'The job is on hold: resume it first.');
  const after = happen(state, event);
  return after.ok ? ok(record(after.value, event)) : after;
};

/** The state after more events. On a refusal `at` is the place of the event, counted from 1. */
export const applyEvents = (
  state: JobState,
  events: readonly JobEvent[],
): Result<JobState, Refusal & { readonly at: number }> => {
  let now = state;
  for (const [index, event] of events.entries()) {
    const after = applyEvent(now, event);
    if (!after.ok) return err({ ...after.error, at: index + 1 });
    now = after.value;
  }
  return ok(now);
};

/** The state after all events of a job, from its opening. On a refusal `at` is the place of the event, counted from 1. */
export const replay = (
  revision: Revision,
  events: readonly JobEvent[],
): Result<JobState, Refusal & { readonly at: number }> => {
  const [opening, ...rest] = events;
  if (opening === undefined)
    return err({ code: 'notOpened', message: 'The job has no events.', at: 1 });
  const opened = openJob(revision, opening);
  if (!opened.ok) return err({ ...opened.error, at: 1 });
  const after = applyEvents(opened.value, rest);
  return after.ok ? after : err({ ...after.error, at: after.error.at + 1 });
};
