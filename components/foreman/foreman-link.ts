import { z } from 'zod';
import type { JobEvent } from '@/lib/job';
import { personSchema, type Person } from '@/lib/people';
import { err, ok, type Result } from '@/lib/result';

export interface ForemanSignedOn {
  readonly person: Person;
  readonly device: string;
}

const sessionSchema = z.object({ person: personSchema, device: z.string() });
const problemSchema = z.object({ error: z.object({ message: z.string() }) });

const unreachable = 'The server cannot be reached. Nothing was changed; try again.';

const send = async (
  path: string,
  method: 'POST' | 'DELETE',
  body?: unknown,
): Promise<Result<unknown, { readonly message: string; readonly signedOff: boolean }>> => {
  try {
    const response = await fetch(path, {
      method,
      headers: { 'content-type': 'application/json' },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const text = await response.text();
    const content: unknown = text === '' ? undefined : JSON.parse(text);
    if (response.ok) return ok(content);
    const problem = problemSchema.safeParse(content);
    const message = problem.success
      ? problem.data.error.message
      : `The server answered with ${response.status}.`;
    return err({ message, signedOff: response.status === 401 });
  } catch {
    return err({ message: unreachable, signedOff: false }); // cut off: whoever asked says so
  }
};

export const signForemanOn = async (
  person: string,
  pin: string,
): Promise<Result<ForemanSignedOn, string>> => {
  const sent = await send('/api/foreman', 'POST', { person, pin });
  if (!sent.ok) return err(sent.error.message);
  const session = sessionSchema.safeParse(sent.value);
  return session.success ? ok(session.data) : err('The server’s answer was not understood.');
};

export const signForemanOff = async (): Promise<void> => {
  await send('/api/foreman', 'DELETE');
};

/** Stores a foreman's events; the error says what to do, and whether to sign on first. */
export const sendForemanEvents = (job: string, events: readonly JobEvent[]) =>
  send(`/api/jobs/${job}/foreman`, 'POST', { events });
