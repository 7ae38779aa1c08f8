import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { idSchema } from '../procedure';
import { unreachable } from '../result';
import { closeMark, markSheet, reviewOf, type MarkFault } from '../store/review';
import { readJson } from './body';
import { answer, problem } from './problem';
import type { Endpoint } from './route';
import { sameOrigin } from './same-origin';
import { foremanIn, signedOnToWrite } from './signed-on';

const markSchema = z.strictObject({
  procedure: idSchema,
  revision: z.number().int().positive(),
  step: idSchema.optional(),
  note: z.string().trim().min(1).max(2000),
  seen: z.strictObject({ job: z.uuid(), seq: z.number().int().positive() }).optional(),
});

const markProblem = (fault: MarkFault): Response => {
  switch (fault) {
    case 'unknownRevision':
      return problem('unknownRevision', 'There is no such published revision.');
    case 'unknownStep':
      return problem('invalid', 'That revision has no such step.');
    case 'unknownJob':
      return problem('unknownJob', 'There is no such moment of a job.');
    case 'unknownMark':
      return problem('notFound', 'There is no such mark on a sheet.');
    case 'doneAlready':
      return problem('conflict', 'Somebody has dealt with this mark already.');
    default:
      return unreachable(fault);
  }
};

/**
 * POST /api/review/marks {procedure, revision, step?, note, seen?: {job, seq}}: a foreman who is signed on at a screen
 * of their own decides that a sheet wants changing. Answers its id.
 */
export const writeMark: Endpoint<unknown> = async (server, request) => {
  const ours = sameOrigin(request);
  if (!ours.ok) return ours.error;
  const foreman = await foremanIn(server, request.headers.get('cookie'));
  if (foreman === undefined)
    return problem('signOn', 'Only a foreman marks a sheet: sign on at /foreman first.');
  const body = await readJson(request, markSchema);
  if (!body.ok) return body.error;
  const id = randomUUID();
  const kept = await markSheet(server.store, body.value, {
    id,
    by: foreman.person.id,
    at: server.now().toISOString(),
  });
  return kept.ok ? answer({ id }, 201) : markProblem(kept.error);
};

/** GET /api/review/marks?procedure=&revision=: what was marked, newest first. Names only for a foreman. */
export const readMarks: Endpoint<unknown> = async (server, request) => {
  const query = new URL(request.url).searchParams;
  const wanted = z
    .object({
      procedure: idSchema.optional(),
      revision: z.coerce.number().int().positive().optional(),
    })
    .safeParse({
      procedure: query.get('procedure') ?? undefined,
      revision: query.get('revision') ?? undefined,
    });
  if (!wanted.success) return problem('invalid', 'Name a procedure and a revision, or neither.');
  const foreman = await foremanIn(server, request.headers.get('cookie'));
  const review = await reviewOf(server.store, { names: foreman !== undefined, now: server.now() });
  return review === undefined
    ? problem('unavailable', 'The shop has not been set up yet.')
    : answer({ marks: await review.marks(wanted.data.procedure, wanted.data.revision) });
};

/**
 * POST /api/review/marks/ID/done: a writer who is signed on has dealt with it. Who decided does not also tick it off;
 * a newer revision of the procedure does so by itself.
 */
export const finishMark: Endpoint<{ readonly mark: string }> = async (
  server,
  request,
  { mark },
) => {
  const session = await signedOnToWrite(server, request);
  if (!session.ok) return session.error;
  const { person } = session.value;
  if (person.role !== 'writer')
    return problem('notYourRole', 'The sheet’s writer says that it is done.');
  const closed = await closeMark(server.store, mark, {
    by: person.id,
    at: server.now().toISOString(),
  });
  return closed.ok ? answer({ id: mark }) : markProblem(closed.error);
};
