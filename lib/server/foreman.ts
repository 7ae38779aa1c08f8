import { z } from 'zod';
import { checkPin, foremanFault, pinSchema, visitFault, type Session } from '../access';
import type { JobEvent } from '../job';
import { idSchema } from '../procedure';
import { readShop } from '../store';
import { readJson } from './body';
import { eventsSchema, faultIn, store, storeInAnyBay, type JobParams } from './jobs';
import { problem } from './problem';
import type { Endpoint } from './route';
import { sameOrigin } from './same-origin';
import { pinProblem } from './session';
import { foremanIn, sessionIn } from './signed-on';
import type { ShopServer } from './shop-server';

/** With person and PIN: a visit to somebody's kiosk. Without: from the foreman's own screen. */
const actsSchema = z
  .strictObject({
    person: idSchema.optional(),
    pin: pinSchema.optional(),
    events: eventsSchema,
  })
  .refine(({ person, pin }) => (person === undefined) === (pin === undefined), {
    message: 'a person and a PIN go together',
  });

const nobody = (): Response =>
  problem('signOn', 'Nobody is signed on at this screen; sign on first.');

const visit = async (
  server: ShopServer,
  { device, ...kiosk }: Session,
  job: string,
  { person, pin, events }: { person: string; pin: string; events: readonly JobEvent[] },
): Promise<Response> => {
  const nowMs = server.now().getTime();
  const checked = await checkPin(server.store, { person, pin, device }, nowMs);
  if (!checked.ok) return pinProblem(checked.error);
  if (checked.value.role !== 'foreman') {
    return problem('notForeman', 'Only a foreman may decide and sign here.');
  }
  const visitor = { person: checked.value, device };
  const fault = faultIn(events, (event) => visitFault(event, visitor));
  return fault ?? store(server, { device, ...kiosk }, job, events);
};

/** A job is given to a mechanic or foreman of the shop, and to nobody else. */
const strangerIn = async (
  server: ShopServer,
  events: readonly JobEvent[],
): Promise<Response | undefined> => {
  for (const [index, { happening }] of events.entries()) {
    if (happening.type !== 'jobReassigned' || happening.mechanic === undefined) continue;
    const { mechanic } = happening;
    const people = (await readShop(server.store))?.people ?? [];
    if (
      !people.some(({ id, role }) => id === mechanic && (role === 'mechanic' || role === 'foreman'))
    )
      return problem('invalid', 'The shop has no such mechanic.', { index });
  }
  return undefined;
};

/**
 * POST /api/jobs/JOB/foreman {person, pin, events}: a foreman steps up to a mechanic's kiosk, gives their own PIN for
 * these events alone, and decides, signs, answers or reopens. The mechanic stays signed on. Or {events} from a
 * foreman's own screen, where they are signed on (POST /api/foreman): these, and also holds and moves, in any bay.
 */
export const appendForemanEvents: Endpoint<JobParams> = async (server, request, { job }) => {
  const ours = sameOrigin(request);
  if (!ours.ok) return ours.error;
  const cookies = request.headers.get('cookie');
  const kiosk = await sessionIn(server, cookies);
  const foreman = await foremanIn(server, cookies);
  if (kiosk === undefined && foreman === undefined) return nobody();
  const body = await readJson(request, actsSchema);
  if (!body.ok) return body.error;
  const { person, pin, events } = body.value;
  if (person !== undefined && pin !== undefined)
    return kiosk === undefined ? nobody() : visit(server, kiosk, job, { person, pin, events });
  if (foreman === undefined) return nobody();
  const fault =
    faultIn(events, (event) => foremanFault(event, foreman)) ?? (await strangerIn(server, events));
  return fault ?? storeInAnyBay(server, job, events);
};
