import { z } from 'zod';
import { jobEventSchema, replay, type JobEvent, type JobState } from '@/lib/job';
import { personSchema } from '@/lib/people';
import { revisionSchema } from '@/lib/procedure';
import { err, ok, type Result } from '@/lib/result';
import type { Delivery } from './event-queue';
import type { KioskLink, SignedOn } from './link';

const problemSchema = z.object({
  error: z.object({ code: z.string(), message: z.string(), index: z.number().optional() }),
});
const sessionSchema = z.object({ person: personSchema, device: z.string() });
const headSchema = z.object({ head: z.string() });
const jobSchema = z.object({ revision: revisionSchema, events: z.array(jobEventSchema) });

const unreachable = 'The server cannot be reached. Try again, or look at its cable.';

interface Answer {
  readonly status: number;
  readonly body: unknown;
}

/** `undefined`: no answer came. */
const ask = async (path: string, init: RequestInit): Promise<Answer | undefined> => {
  try {
    const response = await fetch(path, init);
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

/** The first event of the batch was already in the way of another: so none of the batch is stored. */
const overtaken = ({ body }: Answer): boolean => {
  const parsed = problemSchema.safeParse(body);
  return parsed.success && parsed.data.error.code === 'conflict' && parsed.data.error.index === 0;
};

const deliver = async (job: string, events: readonly JobEvent[]): Promise<Delivery> => {
  const answer = await post(`/api/jobs/${job}/events`, { events });
  if (answer === undefined || passes(answer.status)) return { kind: 'unreachable' };
  if (fine(answer)) return { kind: 'stored' };
  return answer.status === 401
    ? { kind: 'signOn' }
    : { kind: 'refused', message: messageOf(answer), overtaken: overtaken(answer) };
};

const readJob = async (job: string): Promise<Result<JobState, string>> => {
  const answer = await ask(`/api/jobs/${job}`, { method: 'GET' });
  if (answer === undefined) return err(unreachable);
  if (!fine(answer)) return err(messageOf(answer));
  const parsed = jobSchema.safeParse(answer.body);
  if (!parsed.success) return err('The job was not understood; the kiosk may need a reload.');
  const replayed = replay(parsed.data.revision, parsed.data.events);
  return replayed.ok ? replayed : err(replayed.error.message);
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
  readHead,
  foreman: async (job, person, pin, events) =>
    worked(await post(`/api/jobs/${job}/foreman`, { person, pin, events })),
  keepShopSettings: async (changed) => worked(await send('PUT', '/api/shop/settings', changed)),
  keepClip: async (id, clip) =>
    worked(
      await ask(`/api/clips/${id}`, {
        method: 'PUT',
        headers: { 'content-type': 'audio/wav' },
        body: clip,
      }),
    ),
};
