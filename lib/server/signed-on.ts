import {
  deviceOf,
  deviceSecretSchema,
  findSession,
  foremanDeviceOf,
  type Session,
} from '../access';
import { err, ok, type Result } from '../result';
import { cookieIn, deviceCookie, foremanCookie, sessionCookie } from './cookies';
import { problem } from './problem';
import { sameOrigin } from './same-origin';
import type { ShopServer } from './shop-server';

/** The secret of the kiosk's browser, if it has one that could be ours. */
export const deviceSecretIn = (cookies: string | null): string | undefined =>
  deviceSecretSchema.safeParse(cookieIn(cookies, deviceCookie)).data;

/** The session under a cookie, at a device that is named after the browser's secret. */
const sessionUnder = async (
  { store, now }: ShopServer,
  cookies: string | null,
  cookie: string,
  nameOf: (secret: string) => string,
): Promise<Session | undefined> => {
  const token = cookieIn(cookies, cookie);
  const secret = deviceSecretIn(cookies);
  if (token === undefined || secret === undefined) return undefined;
  return findSession(store, token, nameOf(secret), now().getTime());
};

/** Who is signed on, by the Cookie header of a request; for pages as for the interface. */
export const sessionIn = (
  server: ShopServer,
  cookies: string | null,
): Promise<Session | undefined> => sessionUnder(server, cookies, sessionCookie, deviceOf);

/** The foreman who is signed on at a screen of their own; its `bay` says nothing. */
export const foremanIn = async (
  server: ShopServer,
  cookies: string | null,
): Promise<Session | undefined> => {
  const session = await sessionUnder(server, cookies, foremanCookie, foremanDeviceOf);
  return session?.person.role === 'foreman' ? session : undefined;
};

/** Lets a request through that only reads, from a kiosk or a foreman's screen. */
export const signedOnToRead = async (
  server: ShopServer,
  request: Request,
): Promise<Result<Session, Response>> => {
  const foreman = await foremanIn(server, request.headers.get('cookie'));
  return foreman === undefined ? signedOn(server, request) : ok(foreman);
};

/** Lets a request through from somebody who is signed on. */
export const signedOn = async (
  server: ShopServer,
  request: Request,
): Promise<Result<Session, Response>> => {
  const session = await sessionIn(server, request.headers.get('cookie'));
  return session === undefined
    ? err(problem('signOn', 'Nobody is signed on at this kiosk; sign on first.'))
    : ok(session);
};

/** The same for a write, which must also come from a page of this server. */
export const signedOnToWrite = async (
  server: ShopServer,
  request: Request,
): Promise<Result<Session, Response>> => {
  const ours = sameOrigin(request);
  return ours.ok ? signedOn(server, request) : ours;
};
