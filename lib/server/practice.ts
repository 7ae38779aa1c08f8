import { practiceSchema } from '../practice';
import { keepPractice, practicesOf } from '../store/practices';
import { readJson } from './body';
import { answer, problem } from './problem';
import type { Endpoint } from './route';
import { signedOn, signedOnToWrite } from './signed-on';

/** GET /api/practice: the newest voice practice with each speech model of whoever is signed on at this kiosk. */
export const readPractices: Endpoint<unknown> = async (server, request) => {
  const session = await signedOn(server, request);
  if (!session.ok) return session.error;
  return answer({ practices: await practicesOf(server.store, session.value.person.id) });
};

/** POST /api/practice (lib/practice, `PracticeRecord`): keeps a practice with whoever is signed on; nobody else's. */
export const addPractice: Endpoint<unknown> = async (server, request) => {
  const session = await signedOnToWrite(server, request);
  if (!session.ok) return session.error;
  const body = await readJson(request, practiceSchema);
  if (!body.ok) return body.error;
  const { person } = session.value;
  const kept = await keepPractice(server.store, person.id, body.value, server.now());
  return kept === 'idReused'
    ? problem('idReused', 'Another practice is kept under this id already.')
    : answer({ practice: body.value.id }, kept === 'kept' ? 201 : 200);
};
