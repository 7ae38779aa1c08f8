import { z } from 'zod';
import {
  beginSession,
  checkPin,
  endSession,
  foremanDeviceOf,
  newDeviceSecret,
  pinSchema,
  sessionMs,
  type Session,
} from '../access';
import { idSchema } from '../procedure';
import { readShop } from '../store';
import { readJson } from './body';
import { cookieIn, deviceCookie, foremanCookie, setCookie } from './cookies';
import { log } from './log';
import { answer, done, problem } from './problem';
import type { Endpoint } from './route';
import { sameOrigin } from './same-origin';
import { pinProblem } from './session';
import { deviceSecretIn, foremanIn } from './signed-on';

const signOnSchema = z.strictObject({ person: idSchema, pin: pinSchema });

/** Browsers keep a cookie for 400 days at most. */
const deviceCookieS = 400 * 86_400;

const view = ({ person, device, endsAtMs }: Session) => ({
  person,
  device,
  endsAt: new Date(endsAtMs).toISOString(),
});

/** POST /api/foreman {person, pin}: signs a foreman on at a screen of their own, slowed down like at a kiosk. */
export const signForemanOn: Endpoint<unknown> = async (server, request) => {
  const ours = sameOrigin(request);
  if (!ours.ok) return ours.error;
  const body = await readJson(request, signOnSchema);
  if (!body.ok) return body.error;
  const cookies = request.headers.get('cookie');
  const secret = deviceSecretIn(cookies) ?? newDeviceSecret();
  const screen = setCookie(request, deviceCookie, secret, deviceCookieS);
  const device = foremanDeviceOf(secret);
  const nowMs = server.now().getTime();
  const checked = await checkPin(server.store, { ...body.value, device }, nowMs);
  if (!checked.ok) return pinProblem(checked.error, [screen]);
  if (checked.value.role !== 'foreman')
    return problem('notForeman', 'This screen is for foremen.', {}, [screen]);
  const before = cookieIn(cookies, foremanCookie);
  if (before !== undefined) await endSession(server.store, before);
  // A session names a bay; this one is bound to none, and `foremanIn` alone finds it.
  const bay = (await readShop(server.store))?.bays[0]?.id;
  if (bay === undefined) return problem('unknownBay', 'The shop has no bays.');
  const session = { person: checked.value, bay, device };
  const token = await beginSession(server.store, session, nowMs);
  log.info({ device, role: checked.value.role }, 'signed on');
  return answer(view({ ...session, endsAtMs: nowMs + sessionMs }), 200, [
    screen,
    setCookie(request, foremanCookie, token, sessionMs / 1000),
  ]);
};

/** GET /api/foreman: the foreman who is signed on at this screen, or null. */
export const readForeman: Endpoint<unknown> = async (server, request) => {
  const session = await foremanIn(server, request.headers.get('cookie'));
  return answer({ session: session === undefined ? null : view(session) });
};

/** DELETE /api/foreman: signs off. Doing it twice does no harm. */
export const signForemanOff: Endpoint<unknown> = async (server, request) => {
  const ours = sameOrigin(request);
  if (!ours.ok) return ours.error;
  const token = cookieIn(request.headers.get('cookie'), foremanCookie);
  if (token !== undefined) await endSession(server.store, token);
  return done([setCookie(request, foremanCookie, '', 0)]);
};
