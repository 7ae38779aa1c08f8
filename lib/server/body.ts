import type { z } from 'zod';
import { err, ok, type Result } from '../result';
import { problem } from './problem';
import { jsonFault } from './json-fault';

export const jsonLimitBytes = 1_000_000;

const contentType = (request: Request): string =>
  (request.headers.get('content-type') ?? '').split(';')[0]?.trim().toLowerCase() ?? '';

const tooLarge = (limit: number): Response =>
  // The rest of the body is not read: the connection cannot be used again.
  problem('tooLarge', `The content is longer than ${limit} bytes.`, {}, [['connection', 'close']]);

const readAtMost = async (
  body: ReadableStream<Uint8Array> | null,
  limit: number,
): Promise<Result<Uint8Array<ArrayBuffer>, Response>> => {
  const chunks: Uint8Array[] = [];
  let length = 0;
  const reader = body?.getReader();
  for (;;) {
    const chunk = await reader?.read();
    if (chunk === undefined || chunk.done) break;
    length += chunk.value.byteLength;
    if (length > limit) {
      await reader?.cancel();
      return err(tooLarge(limit));
    }
    chunks.push(chunk.value);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.byteLength;
  }
  return ok(whole);
};

/** Reads a body of at most `limit` bytes; stops reading as soon as it is longer. */
export const readBytes = async (
  request: Request,
  type: string,
  limit: number,
): Promise<Result<Uint8Array<ArrayBuffer>, Response>> => {
  if (contentType(request) !== type) {
    return err(problem('contentType', `The content must be ${type}.`));
  }
  if (Number(request.headers.get('content-length') ?? 0) > limit) return err(tooLarge(limit));
  try {
    return await readAtMost(request.body, limit);
  } catch {
    return err(problem('malformed', 'The content ended before it was complete.'));
  }
};

const parse = (content: Uint8Array): Result<unknown, Response> => {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(content);
    return ok(JSON.parse(text));
  } catch {
    return err(problem('malformed', 'The content is not JSON in UTF-8.'));
  }
};

const firstIssue = (error: z.ZodError): string => {
  const [issue] = error.issues;
  const at = issue?.path.map(String).join('.') ?? '';
  return `${at === '' ? 'The content' : at}: ${issue?.message ?? 'is not valid'}`;
};

/** Reads a JSON body as what a schema says. */
export const readJson = async <T>(
  request: Request,
  schema: z.ZodType<T>,
): Promise<Result<T, Response>> => {
  const content = await readBytes(request, 'application/json', jsonLimitBytes);
  if (!content.ok) return content;
  const value = parse(content.value);
  if (!value.ok) return value;
  const fault = jsonFault(value.value);
  if (fault !== undefined) return err(problem('malformed', fault));
  const parsed = schema.safeParse(value.value);
  return parsed.success ? ok(parsed.data) : err(problem('invalid', firstIssue(parsed.error)));
};
