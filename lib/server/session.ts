import { z } from 'zod';
import {
  beginSession,
  checkPin,
  deviceOf,
  endSession,
  newDeviceSecret,
  pinSchema,
  sessionMs,
  type PinFailure,
  type Session,
} from '../access';
import { idSchema } from '../procedure';
import { readBay } from '../store/shop-records';
import { readJson } from './body';
import { cookieIn, deviceCookie, sessionCookie, setCookie } from './cookies';
import { log } from './log';
import { answer, done, problem } from './problem';
import type { Endpoint } from './route';
import { sameOrigin } from './same-origin';
import { deviceSecretIn, sessionIn } from './signed-on';

const signOnSchema = z.strictObject({ person: idSchema, pin: pinSchema, bay: idSchema });

/** Browsers keep a cookie for 400 days at most. */
const deviceCookieS = 400 * 86_400;

const view = ({ person, bay, device, endsAtMs }: Session) => ({
  person,
  bay,
  device,
  endsAt: new Date(endsAtMs).toISOString(),
});

/** The answer to a PIN that was not taken. */
export const pinProblem = (
  failure: PinFailure,
  headers: readonly (readonly [string, string])[] = [],
): Response => {
  if (failure.kind === 'wrongPin') {
    return problem('wrongPin', 'That is not the PIN of this person.', {}, headers);
  }
  const seconds = Math.ceil(failure.forMs / 1000);
  return problem('wait', `Too many wrong PINs. Try again in ${seconds} s.`, {}, [
    ...headers,
    ['retry-after', String(seconds)],
  ]);
};

/** POST /api/session {person, pin, bay}: signs a person on at this kiosk, in place of whoever was before. */
export const signOn: Endpoint<unknown> = async (server, request) => {
  const ours = sameOrigin(request);
  if (!ours.ok) return ours.error;
  const body = await readJson(request, signOnSchema);
  if (!body.ok) return body.error;
  const { person, pin, bay } = body.value;
  if ((await readBay(server.store.db, bay)) === undefined) {
    return problem('unknownBay', 'The shop has no such bay.');
  }
  const cookies = request.headers.get('cookie');
  const secret = deviceSecretIn(cookies) ?? newDeviceSecret();
  const kiosk = setCookie(request, deviceCookie, secret, deviceCookieS);
  const device = deviceOf(secret);
  const nowMs = server.now().getTime();
  const checked = await checkPin(server.store, { person, pin, device }, nowMs);
  if (!checked.ok) return pinProblem(checked.error, [kiosk]);
  const before = cookieIn(cookies, sessionCookie);
  if (before !== undefined) await endSession(server.store, before);
  const session = { person: checked.value, bay, device };
  const token = await beginSession(server.store, session, nowMs);
  log.info({ device, bay, role: checked.value.role }, 'signed on');
  return answer(view({ ...session, endsAtMs: nowMs + sessionMs }), 200, [
    kiosk,
    setCookie(request, sessionCookie, token, sessionMs / 1000),
  ]);
};

/** GET /api/session: who is signed on at this kiosk, or null. */
export const readSession: Endpoint<unknown> = async (server, request) => {
  const session = await sessionIn(server, request.headers.get('cookie'));
  return answer({ session: session === undefined ? null : view(session) });
};

/** DELETE /api/session: signs off. Doing it twice does no harm. */
export const signOff: Endpoint<unknown> = async (server, request) => {
  const ours = sameOrigin(request);
  if (!ours.ok) return ours.error;
  const token = cookieIn(request.headers.get('cookie'), sessionCookie);
  if (token !== undefined) await endSession(server.store, token);
  return done([setCookie(request, sessionCookie, '', 0)]);
};
