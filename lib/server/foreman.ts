import { z } from 'zod';
import { checkPin, pinSchema, visitFault } from '../access';
import { idSchema } from '../procedure';
import { readJson } from './body';
import { eventsSchema, faultIn, store, type JobParams } from './jobs';
import { problem } from './problem';
import type { Endpoint } from './route';
import { pinProblem } from './session';
import { signedOnToWrite } from './signed-on';

const visitSchema = z.strictObject({ person: idSchema, pin: pinSchema, events: eventsSchema });

/**
 * POST /api/jobs/JOB/foreman {person, pin, events}: a foreman steps up to a mechanic's kiosk, gives their own PIN for
 * these events alone, and decides, signs, answers or reopens. The mechanic stays signed on.
 */
export const appendForemanEvents: Endpoint<JobParams> = async (server, request, { job }) => {
  const session = await signedOnToWrite(server, request);
  if (!session.ok) return session.error;
  const body = await readJson(request, visitSchema);
  if (!body.ok) return body.error;
  const { person, pin, events } = body.value;
  const { device } = session.value;
  const nowMs = server.now().getTime();
  const checked = await checkPin(server.store, { person, pin, device }, nowMs);
  if (!checked.ok) return pinProblem(checked.error);
  if (checked.value.role !== 'foreman') {
    return problem('notForeman', 'Only a foreman may decide and sign here.');
  }
  const visitor = { person: checked.value, device };
  const fault = faultIn(events, (event) => visitFault(event, visitor));
  return fault ?? store(server, session.value, job, events);
};
