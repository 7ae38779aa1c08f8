import { readdirSync } from 'node:fs';
import { join, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { z } from 'zod';

type Handler = (
  request: Request,
  context: { readonly params: Promise<Readonly<Record<string, string>>> },
) => Promise<Response>;

type Handlers = Readonly<Record<string, Handler>>;

/** One address of the interface. */
interface AppRoute {
  readonly parts: readonly string[];
  /** Loaded when it is asked for first, so that a server is there at once. */
  readonly handlers: () => Promise<Handlers>;
}

const root = fileURLToPath(new URL('../../../app/', import.meta.url));

const isHandler = (value: unknown): value is Handler => typeof value === 'function';
const moduleSchema = z.record(z.string(), z.unknown());

/** Fixed parts before open ones, and what takes the rest last. */
const rank = (part: string | undefined): number =>
  part === undefined ? 0 : part.startsWith('[...') ? 3 : part.startsWith('[') ? 2 : 1;

const inOrder = (a: AppRoute, b: AppRoute): number => {
  for (let at = 0; at < Math.max(a.parts.length, b.parts.length); at += 1) {
    const difference = rank(a.parts[at]) - rank(b.parts[at]);
    if (difference !== 0) return difference;
  }
  return 0;
};

const loaded = async (path: string): Promise<Handlers> => {
  const exported = moduleSchema.parse({ ...(await import(pathToFileURL(path).href)) });
  return Object.fromEntries(
    Object.entries(exported).flatMap(([name, value]) => (isHandler(value) ? [[name, value]] : [])),
  );
};

const routeOf = (file: string): AppRoute => {
  let handlers: Promise<Handlers> | undefined;
  return {
    parts: ['api', ...file.split(sep).slice(0, -1)],
    handlers: () => (handlers ??= loaded(join(root, 'api', file))),
  };
};

/** The routes under app/api, as the framework finds them: a folder a part, `[name]` any one, `[...name]` the rest. */
export const appRoutes = (): readonly AppRoute[] =>
  readdirSync(join(root, 'api'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('route.ts'))
    .map(routeOf)
    .sort(inOrder);

const paramsOf = (
  parts: readonly string[],
  path: readonly string[],
): Readonly<Record<string, string>> | undefined => {
  const params: Record<string, string> = {};
  for (const [at, part] of parts.entries()) {
    if (part.startsWith('[...')) return params;
    const given = path[at];
    if (given === undefined) return undefined;
    if (part.startsWith('[')) params[part.slice(1, -1)] = given;
    else if (part !== given) return undefined;
  }
  return parts.length === path.length ? params : undefined;
};

/** Answers a request by the route that is for its address; nothing where there is none or the address is no text. */
export const answerBy = async (
  routes: readonly AppRoute[],
  request: Request,
): Promise<Response | undefined> => {
  let path: readonly string[];
  try {
    path = new URL(request.url).pathname.split('/').slice(1).map(decodeURIComponent);
  } catch {
    return undefined; // cannot be decoded: refused by whoever serves
  }
  for (const { parts, handlers } of routes) {
    const params = paramsOf(parts, path);
    if (params === undefined) continue;
    const handler = (await handlers())[request.method];
    return handler?.(request, { params: Promise.resolve(params) });
  }
  return undefined;
};
