import { z } from 'zod';
import { jobEventSchema, replay, type JobEvent, type JobState } from '@/lib/job';
import { personSchema } from '@/lib/people';
import { revisionSchema } from '@/lib/procedure';
import { err, ok, type Result } from '@/lib/result';
import type { Delivery, StoredJob } from '@/lib/outbox';
import type { BayNow, KioskLink, SignedOn } from './link';

const problemSchema = z.object({
  error: z.object({ code: z.string(), message: z.string(), index: z.number().optional() }),
});
const sessionSchema = z.object({ person: personSchema, device: z.string() });
const hereSchema = z.object({ session: sessionSchema.extend({ bay: z.string() }).nullable() });
const baySchema = z.object({ job: z.object({ id: z.string(), seq: z.number() }).nullable() });
const headSchema = z.object({ head: z.string() });
const jobSchema = z.object({ revision: revisionSchema, events: z.array(jobEventSchema) });

const unreachable = 'The server cannot be reached. Try again, or look at its cable.';

interface Answer {
  readonly status: number;
  readonly body: unknown;
}

/** A pulled cable says nothing: after this long without an answer nobody is there. A sound clip is larger. */
const patienceMs = 15_000;
const clipPatienceMs = 60_000;
/** While a kiosk opens, nobody can work at it. */
const openingPatienceMs = 4_000;

/** `undefined`: no answer came. */
const ask = async (
  path: string,
  init: RequestInit,
  limitMs = patienceMs,
): Promise<Answer | undefined> => {
  try {
    const response = await fetch(path, { ...init, signal: AbortSignal.timeout(limitMs) });
    const text = await response.text();
    return { status: response.status, body: text === '' ? undefined : JSON.parse(text) };
  } catch {
    return undefined; // cut off, or an answer that is none of ours: the same to whoever waits for it
  }
};

const send = (method: 'POST' | 'PUT', path: string, body: unknown): Promise<Answer | undefined> =>
  ask(path, {
    method,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });

const post = (path: string, body: unknown): Promise<Answer | undefined> => send('POST', path, body);

const fine = ({ status }: Answer): boolean => status >= 200 && status < 300;

const messageOf = ({ body, status }: Answer): string => {
  const parsed = problemSchema.safeParse(body);
  return parsed.success ? parsed.data.error.message : `The server answered with ${status}.`;
};

const worked = (answer: Answer | undefined): Result<void, string> => {
  if (answer === undefined) return err(unreachable);
  return fine(answer) ? ok(undefined) : err(messageOf(answer));
};

const signOn: KioskLink['signOn'] = async (person, pin, bay) => {
  const answer = await post('/api/session', { person, pin, bay });
  const done = worked(answer);
  if (!done.ok) return done;
  const session = sessionSchema.safeParse(answer?.body);
  return session.success
    ? ok<SignedOn>(session.data)
    : err('The server’s answer was not understood.');
};

/** Trouble of the server passes; a refusal of what was sent does not. */
const passes = (status: number): boolean => status >= 500 || status === 429 || status === 408;

/** Somebody else wrote to the job first, or the store refuses an event for itself. */
const deliveryOf = (answer: Answer): Delivery => {
  const parsed = problemSchema.safeParse(answer.body);
  const { code, index = 0 } = parsed.success ? parsed.data.error : { code: '' };
  return code === 'conflict'
    ? { kind: 'overtaken', index }
    : { kind: 'refused', message: messageOf(answer), index };
};

const deliver = async (job: string, events: readonly JobEvent[]): Promise<Delivery> => {
  const answer = await post(`/api/jobs/${job}/events`, { events });
  if (answer === undefined) return { kind: 'unreachable' };
  if (passes(answer.status)) return { kind: 'unreachable', message: messageOf(answer) };
  if (fine(answer)) return { kind: 'stored' };
  return answer.status === 401 ? { kind: 'signOn' } : deliveryOf(answer);
};

const readRecord = async (job: string): Promise<Result<StoredJob, string>> => {
  const answer = await ask(`/api/jobs/${job}`, { method: 'GET' });
  if (answer === undefined) return err(unreachable);
  if (!fine(answer)) return err(messageOf(answer));
  const parsed = jobSchema.safeParse(answer.body);
  return parsed.success
    ? ok<StoredJob>(parsed.data)
    : err('The job was not understood; the kiosk may need a reload.');
};

const readJob = async (job: string): Promise<Result<JobState, string>> => {
  const record = await readRecord(job);
  if (!record.ok) return record;
  const replayed = replay(record.value.revision, record.value.events);
  return replayed.ok ? replayed : err(replayed.error.message);
};

const readBay = async (bay: string): Promise<Result<BayNow, string>> => {
  const [there, session] = await Promise.all([
    ask(`/api/bays/${bay}`, { method: 'GET' }, openingPatienceMs),
    ask('/api/session', { method: 'GET' }, openingPatienceMs),
  ]);
  if (there === undefined || session === undefined) return err(unreachable);
  const open = baySchema.safeParse(there.body);
  const here = hereSchema.safeParse(session.body);
  if (!open.success || !here.success) return err(messageOf(open.success ? session : there));
  const signedOn = here.data.session?.bay === bay ? here.data.session : undefined;
  return ok<BayNow>({ job: open.data.job ?? undefined, signedOn });
};

const readHead = async (job: string): Promise<Result<string, string>> => {
  const answer = await ask(`/api/jobs/${job}`, { method: 'GET' });
  if (answer === undefined) return err(unreachable);
  const parsed = headSchema.safeParse(answer.body);
  return parsed.success ? ok(parsed.data.head) : err(messageOf(answer));
};

/** The shop's server as this browser reaches it. */
export const httpLink: KioskLink = {
  signOn,
  signOff: async () => worked(await ask('/api/session', { method: 'DELETE' })),
  deliver,
  readJob,
  readRecord,
  readBay,
  readHead,
  foreman: async (job, person, pin, events) =>
    worked(await post(`/api/jobs/${job}/foreman`, { person, pin, events })),
  keepShopSettings: async (changed) => worked(await send('PUT', '/api/shop/settings', changed)),
  keepClip: async (id, clip) =>
    worked(
      await ask(
        `/api/clips/${id}`,
        { method: 'PUT', headers: { 'content-type': 'audio/wav' }, body: clip },
        clipPatienceMs,
      ),
    ),
};
