import { z } from 'zod';
import { parsePosition } from '../wall';
import { openJobIn } from '../store/job-records';
import { readBay } from '../store/shop-records';
import { readJson } from './body';
import { answer, problem, stream } from './problem';
import type { Endpoint } from './route';
import { sameOrigin } from './same-origin';
import { mostListeners } from './wall-hub';

/**
 * GET /api/wall: how every bay stands, as server-sent events (lib/wall/message). With Last-Event-ID, or `after` in the
 * address, only what changed since; from a position that this run of the server does not know, the whole again.
 */
export const readWall: Endpoint<unknown> = async ({ wall }, request) => {
  if (wall.listeners >= mostListeners)
    return problem('unavailable', 'Too many screens look at the wall. Close some.');
  const named =
    request.headers.get('last-event-id') ?? new URL(request.url).searchParams.get('after');
  return stream(await wall.listen(parsePosition(named)), 'text/event-stream; charset=utf-8');
};

const presenceSchema = z.strictObject({ cannotBeHeard: z.string().min(1).max(200).optional() });

/**
 * POST /api/bays/BAY/presence {cannotBeHeard?}: the bay's kiosk is there. Kept in memory only. Answers the bay's open
 * job and its last number, so that a kiosk learns of what others wrote.
 */
export const notePresence: Endpoint<{ readonly bay: string }> = async (
  server,
  request,
  { bay },
) => {
  const ours = sameOrigin(request);
  if (!ours.ok) return ours.error;
  const body = await readJson(request, presenceSchema);
  if (!body.ok) return body.error;
  const { db } = server.store;
  if ((await readBay(db, bay)) === undefined)
    return problem('unknownBay', 'The shop has no such bay.');
  server.wall.present(bay, body.value.cannotBeHeard);
  const job = await openJobIn(db, bay);
  return answer({ job: job === undefined ? null : { id: job.id, seq: job.seq } });
};
