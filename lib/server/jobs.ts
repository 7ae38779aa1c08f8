import { z } from 'zod';
import { writeFault, type Session, type WriteFault } from '../access';
import { jobEventSchema, type JobEvent } from '../job';
import { err, ok, unreachable, type Result } from '../result';
import { headOf, jobView, type AppendFailure } from '../store';
import { jobBay } from '../store/job-records';
import { readJson } from './body';
import { answer, problem } from './problem';
import type { Endpoint } from './route';
import type { ShopServer } from './shop-server';
import { signedOnToWrite } from './signed-on';
import { vehicleFault } from './vehicle-fault';

export interface JobParams {
  readonly job: string;
}

export const eventsSchema = z.array(jobEventSchema).min(1).max(200);
const batchSchema = z.strictObject({ events: eventsSchema });

const faultMessages: Record<WriteFault, string> = {
  notYou: 'The event names somebody else than the person who is signed on.',
  notYourRole: 'The event names another role than the shop gives this person.',
  notYourKiosk: 'The event names another kiosk than this one.',
  notForForeman: 'A second person at this kiosk may only decide, sign, answer or reopen.',
};

/** Refuses a batch in which any event has a fault. */
export const faultIn = (
  events: readonly JobEvent[],
  faultOf: (event: JobEvent) => WriteFault | undefined,
): Response | undefined => {
  for (const [index, event] of events.entries()) {
    const fault = faultOf(event);
    if (fault !== undefined) return problem(fault, faultMessages[fault], { index });
  }
  return undefined;
};

const appendProblem = (failure: AppendFailure): Response => {
  switch (failure.kind) {
    case 'refused': {
      const { refusal, index, expectedSeq } = failure;
      return problem('refused', refusal.message, { code: refusal.code, index, expectedSeq });
    }
    case 'conflict': {
      const { index, expectedSeq } = failure;
      return problem('conflict', 'Somebody else wrote to this job in the meantime.', {
        index,
        expectedSeq,
      });
    }
    case 'idReused': {
      const { index, expectedSeq } = failure;
      const message = 'An event with this id and other content is stored already.';
      return problem('idReused', message, { index, expectedSeq });
    }
    case 'unknownJob':
      return problem('unknownJob', 'There is no such job.');
    case 'unknownBay':
      return problem('unknownBay', 'The shop has no such bay.');
    case 'unknownRevision':
      return problem('unknownRevision', 'There is no such published revision.');
    case 'bayTaken':
      return problem('bayTaken', 'Another job is open in this bay.', { job: failure.job });
    default:
      return unreachable(failure);
  }
};

/** A kiosk writes only to jobs in the bay for which its person signed on. */
const inOwnBay = async (
  { store }: ShopServer,
  session: Session,
  job: string,
  events: readonly JobEvent[],
): Promise<Result<undefined, Response>> => {
  const bays = events.flatMap(({ happening }) =>
    happening.type === 'jobOpened' ? [happening.bay] : [],
  );
  const bay = (await jobBay(store.db, job)) ?? bays[0] ?? session.bay;
  return bay === session.bay
    ? ok(undefined)
    : err(problem('notYourBay', 'This job is in another bay; sign on there.'));
};

/** Stores a batch that may be written. */
export const store = async (
  server: ShopServer,
  session: Session,
  job: string,
  events: readonly JobEvent[],
): Promise<Response> => {
  if (events.some((event) => event.job !== job)) {
    return problem('invalid', 'An event is of another job than the address.');
  }
  const own = await inOwnBay(server, session, job, events);
  return own.ok ? storeInAnyBay(server, job, events) : own.error;
};

/** The same from somebody who is not bound to a bay. */
export const storeInAnyBay = async (
  server: ShopServer,
  job: string,
  events: readonly JobEvent[],
): Promise<Response> => {
  if (events.some((event) => event.job !== job)) {
    return problem('invalid', 'An event is of another job than the address.');
  }
  const stored = await server.log.append(job, events);
  if (!stored.ok) {
    const { error } = stored;
    server.metrics.refused(error.kind === 'refused' ? error.refusal.code : error.kind);
    return appendProblem(error);
  }
  server.metrics.stored(stored.value.seqs.length);
  return answer({ stored: stored.value.seqs, seq: stored.value.seq });
};

/** GET /api/jobs/JOB: the job's procedure revision, all its events in order, and the head of their chain. */
export const readJobEvents: Endpoint<JobParams> = async (server, _, { job }) => {
  const view = await jobView(server.store, job);
  return view === undefined
    ? problem('unknownJob', 'There is no such job.')
    : answer({
        revision: view.revision,
        events: view.events,
        head: await headOf(server.store.db, job),
      });
};

/**
 * POST /api/jobs/JOB/events {events}: stores 1 to 200 events of the person who is signed on, all or none. The first
 * event of a new job is `jobOpened`. Answers {stored: their numbers, seq: the job's last}; again for a batch sent again.
 */
export const appendEvents: Endpoint<JobParams> = async (server, request, { job }) => {
  const session = await signedOnToWrite(server, request);
  if (!session.ok) return session.error;
  const body = await readJson(request, batchSchema);
  if (!body.ok) return body.error;
  const { events } = body.value;
  const fault = faultIn(events, (event) => writeFault(event, session.value));
  return fault ?? vehicleFault(events) ?? store(server, session.value, job, events);
};
