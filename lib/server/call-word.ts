import { z } from 'zod';
import { setCallWord } from '../store/shop-records';
import { callWords } from '../voice';
import { readJson } from './body';
import { answer, problem } from './problem';
import type { Endpoint } from './route';
import { sameOrigin } from './same-origin';
import { signedOnToRead } from './signed-on';

const bodySchema = z.strictObject({ callWord: z.enum(callWords).nullable() });

/**
 * PUT /api/bays/BAY/call-word {callWord}: a foreman or a writer says by which word a bay's kiosk is called; null: by
 * none. Answers the bay.
 */
export const writeCallWord: Endpoint<{ readonly bay: string }> = async (
  server,
  request,
  { bay },
) => {
  const ours = sameOrigin(request);
  if (!ours.ok) return ours.error;
  // From a kiosk, or from a foreman's own screen.
  const session = await signedOnToRead(server, request);
  if (!session.ok) return session.error;
  const { role } = session.value.person;
  if (role !== 'foreman' && role !== 'writer')
    return problem('notYourRole', 'Only a foreman or a writer may set how a kiosk is called.');
  const body = await readJson(request, bodySchema);
  if (!body.ok) return body.error;
  const changed = await setCallWord(server.store, bay, body.value.callWord ?? undefined);
  return changed === undefined
    ? problem('unknownBay', 'The shop has no such bay.')
    : answer({ bay: changed });
};
