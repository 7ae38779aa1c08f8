import { z } from 'zod';
import type { JobEvent } from '@/lib/job';
import { personSchema, type Person } from '@/lib/people';
import { err, type Result } from '@/lib/result';
import { contentOf, readAs, send } from '../link/ask';

export interface ForemanSignedOn {
  readonly person: Person;
  readonly device: string;
}

const sessionSchema = z.object({ person: personSchema, device: z.string() });
const unreachable = 'The server cannot be reached. Nothing was changed; try again.';

export const signForemanOn = async (
  person: string,
  pin: string,
): Promise<Result<ForemanSignedOn, string>> => {
  const answer = await send('POST', '/api/foreman', { person, pin });
  return readAs(contentOf(answer, unreachable), sessionSchema);
};

export const signForemanOff = async (): Promise<void> => {
  await send('DELETE', '/api/foreman');
};

/** Stores a foreman's events; the error says what to do, and whether to sign on first. */
export const sendForemanEvents = async (
  job: string,
  events: readonly JobEvent[],
): Promise<Result<unknown, { readonly message: string; readonly signedOff: boolean }>> => {
  const answer = await send('POST', `/api/jobs/${job}/foreman`, { events });
  const content = contentOf(answer, unreachable);
  return content.ok ? content : err({ message: content.error, signedOff: answer?.status === 401 });
};
