import { z } from 'zod';
import { err, ok, type Result } from '@/lib/result';

/** What the server answered; the content is not looked at yet. */
export interface Answer {
  readonly status: number;
  readonly body: unknown;
}

const problemSchema = z.object({
  error: z.object({ code: z.string(), message: z.string(), index: z.number().optional() }),
});

/** `undefined`: no answer came, or, where there is a limit, none in time. */
export const ask = async (
  path: string,
  init: RequestInit,
  limitMs?: number,
): Promise<Answer | undefined> => {
  try {
    const signal = limitMs === undefined ? {} : { signal: AbortSignal.timeout(limitMs) };
    const response = await fetch(path, { ...init, ...signal });
    const text = await response.text();
    return { status: response.status, body: text === '' ? undefined : JSON.parse(text) };
  } catch {
    return undefined; // cut off, or an answer that is none of ours: the same to whoever waits for it
  }
};

/** The same with JSON to be written. */
export const send = (
  method: 'POST' | 'PUT' | 'DELETE',
  path: string,
  body?: unknown,
  limitMs?: number,
): Promise<Answer | undefined> =>
  ask(
    path,
    {
      method,
      headers: { 'content-type': 'application/json' },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    },
    limitMs,
  );

export const fine = ({ status }: Answer): boolean => status >= 200 && status < 300;

/** The error in the form of our interface (lib/server/problem), where the answer is one. */
export const problemIn = ({ body }: Answer): z.infer<typeof problemSchema>['error'] | undefined =>
  problemSchema.safeParse(body).data?.error;

export const messageOf = (answer: Answer): string =>
  problemIn(answer)?.message ?? `The server answered with ${answer.status}.`;

/** What a good answer holds, or a sentence for the screen; `unreachable` where no answer came. */
export const contentOf = (
  answer: Answer | undefined,
  unreachable: string,
): Result<unknown, string> => {
  if (answer === undefined) return err(unreachable);
  return fine(answer) ? ok(answer.body) : err(messageOf(answer));
};

/** The same, read by its schema. */
export const readAs = <T>(
  content: Result<unknown, string>,
  schema: z.ZodType<T>,
): Result<T, string> => {
  if (!content.ok) return content;
  const parsed = schema.safeParse(content.value);
  return parsed.success ? ok(parsed.data) : err('The server’s answer was not understood.');
};
