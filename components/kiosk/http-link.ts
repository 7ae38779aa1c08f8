import { z } from 'zod';
import { jobEventSchema, replay, type JobEvent, type JobState } from '@/lib/job';
import { personSchema } from '@/lib/people';
import { revisionSchema } from '@/lib/procedure';
import { err, ok, type Result } from '@/lib/result';
import type { Delivery, StoredJob } from '@/lib/outbox';
import { ask, contentOf, fine, messageOf, problemIn, readAs, send, type Answer } from '../link/ask';
import type { BayNow, KioskLink, SignedOn } from './link';

const sessionSchema = z.object({ person: personSchema, device: z.string() });
const hereSchema = z.object({ session: sessionSchema.extend({ bay: z.string() }).nullable() });
const baySchema = z.object({ job: z.object({ id: z.string(), seq: z.number() }).nullable() });
const headSchema = z.object({ head: z.string() });
const jobSchema = z.object({ revision: revisionSchema, events: z.array(jobEventSchema) });

const unreachable = 'The server cannot be reached. Try again, or look at its cable.';

/** A pulled cable says nothing: after this long without an answer nobody is there. A sound clip is larger. */
const patienceMs = 15_000;
const clipPatienceMs = 60_000;
/** While a kiosk opens, nobody can work at it. */
const openingPatienceMs = 4_000;

const look = (path: string, limitMs = patienceMs): Promise<Answer | undefined> =>
  ask(path, { method: 'GET' }, limitMs);

const post = (path: string, body: unknown): Promise<Answer | undefined> =>
  send('POST', path, body, patienceMs);

const worked = (answer: Answer | undefined): Result<void, string> => {
  const content = contentOf(answer, unreachable);
  return content.ok ? ok(undefined) : content;
};

const signOn: KioskLink['signOn'] = async (person, pin, bay) => {
  const answer = await post('/api/session', { person, pin, bay });
  return readAs<SignedOn>(contentOf(answer, unreachable), sessionSchema);
};

/** Trouble of the server passes; a refusal of what was sent does not. */
const passes = (status: number): boolean => status >= 500 || status === 429 || status === 408;

/** Somebody else wrote to the job first, or the store refuses an event for itself. */
const deliveryOf = (answer: Answer): Delivery => {
  const { code, index = 0 } = problemIn(answer) ?? {};
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
  const answer = await look(`/api/jobs/${job}`);
  const content = contentOf(answer, unreachable);
  if (!content.ok) return content;
  const parsed = jobSchema.safeParse(content.value);
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
    look(`/api/bays/${bay}`, openingPatienceMs),
    look('/api/session', openingPatienceMs),
  ]);
  if (there === undefined || session === undefined) return err(unreachable);
  const open = baySchema.safeParse(there.body);
  const here = hereSchema.safeParse(session.body);
  if (!open.success || !here.success) return err(messageOf(open.success ? session : there));
  const signedOn = here.data.session?.bay === bay ? here.data.session : undefined;
  return ok<BayNow>({ job: open.data.job ?? undefined, signedOn });
};

const readHead = async (job: string): Promise<Result<string, string>> => {
  const answer = await look(`/api/jobs/${job}`);
  if (answer === undefined) return err(unreachable);
  const parsed = headSchema.safeParse(answer.body);
  return parsed.success ? ok(parsed.data.head) : err(messageOf(answer));
};

/** The shop's server as this browser reaches it. */
export const httpLink: KioskLink = {
  signOn,
  signOff: async () => worked(await ask('/api/session', { method: 'DELETE' }, patienceMs)),
  deliver,
  readJob,
  readRecord,
  readBay,
  readHead,
  foreman: async (job, person, pin, events) =>
    worked(await post(`/api/jobs/${job}/foreman`, { person, pin, events })),
  keepShopSettings: async (changed) =>
    worked(await send('PUT', '/api/shop/settings', changed, patienceMs)),
  keepClip: async (id, clip) =>
    worked(
      await ask(
        `/api/clips/${id}`,
        { method: 'PUT', headers: { 'content-type': 'audio/wav' }, body: clip },
        clipPatienceMs,
      ),
    ),
};
