import { deviceOf } from '../access';
import { diskTrouble } from './disk-trouble';
import { log } from './log';
import { done, problem } from './problem';
import { routeName } from './route-name';
import { getShopServer, type ShopServer } from './shop-server';
import { deviceSecretIn } from './signed-on';

/** Answers one kind of request. `params` are the parts of the path that vary, by name. */
export type Endpoint<Params> = (
  server: ShopServer,
  request: Request,
  params: Params,
) => Promise<Response>;

type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE' | 'OPTIONS';
type Handler<Params> = (
  request: Request,
  context: { readonly params: Promise<Params> },
) => Promise<Response>;

/** Nobody signed on, a wrong PIN or role, or too many tries: worth a line each (OWASP ASVS 5.0, 16.3). */
const turnedAway: ReadonlySet<number> = new Set([401, 403, 429]);

const deviceIn = (request: Request): string | undefined => {
  const secret = deviceSecretIn(request.headers.get('cookie'));
  return secret === undefined ? undefined : deviceOf(secret);
};

interface Doing {
  readonly method: string;
  readonly route: string;
}

/** The last resort: what went wrong is for the log, not for the answer. */
const failed = (error: unknown, doing: Doing): Response => {
  log.error({ err: error, ...doing }, 'a request failed');
  return (
    diskTrouble(error) ??
    problem('internal', 'The server failed at this. Sending it again does no harm.')
  );
};

const answerOf = async <Params>(
  endpoint: Endpoint<Params>,
  server: ShopServer,
  request: Request,
  params: Params,
  doing: Doing,
): Promise<Response> => {
  try {
    return await endpoint(server, request, params);
  } catch (error) {
    return failed(error, doing);
  }
};

const perform =
  <Params>(endpoint: Endpoint<Params>): Handler<Params> =>
  async (request, context) => {
    const began = performance.now();
    const params = await context.params;
    const doing = {
      method: request.method,
      route: routeName(new URL(request.url).pathname, params),
    };
    const server = await getShopServer();
    if (!server.ok) {
      log.error({ ...doing, reason: server.error }, 'the shop could not be opened');
      return problem('unavailable', server.error);
    }
    const response = await answerOf(endpoint, server.value, request, params, doing);
    const seconds = (performance.now() - began) / 1000;
    const { status } = response;
    server.value.metrics.request({ ...doing, status, seconds });
    if (turnedAway.has(status))
      log.warn({ ...doing, status, device: deviceIn(request) }, 'turned away');
    else log.debug({ ...doing, status, seconds }, 'answered');
    return response;
  };

/** The handlers of one path: the given ones, and a clear refusal for every other method. */
export const route = <Params>(
  endpoints: Partial<Record<Exclude<Method, 'OPTIONS'>, Endpoint<Params>>>,
): Record<Method, Handler<Params>> => {
  const allowed = ['OPTIONS', ...Object.keys(endpoints)].join(', ');
  const refuse: Handler<Params> = (request) =>
    Promise.resolve(
      problem('method', `${request.method} is not for this address.`, {}, [['allow', allowed]]),
    );
  const handler = (endpoint: Endpoint<Params> | undefined): Handler<Params> =>
    endpoint === undefined ? refuse : perform(endpoint);
  return {
    GET: handler(endpoints.GET),
    POST: handler(endpoints.POST),
    PUT: handler(endpoints.PUT),
    PATCH: handler(endpoints.PATCH),
    DELETE: handler(endpoints.DELETE),
    OPTIONS: () => Promise.resolve(done([['allow', allowed]])),
  };
};
