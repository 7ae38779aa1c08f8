import { err, ok, type Result } from '../result';
import { problem } from './problem';

const hostOf = (origin: string): string | undefined => {
  try {
    return new URL(origin).host;
  } catch {
    return undefined;
  }
};

/**
 * Lets a write through only from our own pages. Browsers send Origin with every write and, in a secure context,
 * Sec-Fetch-Site; a page cannot forge either. Other programs send `Origin: http://HOST:PORT` themselves.
 */
export const sameOrigin = (request: Request): Result<undefined, Response> => {
  const site = request.headers.get('sec-fetch-site');
  const origin = request.headers.get('origin');
  const host = request.headers.get('host');
  const ours = origin !== null && host !== null && hostOf(origin) === host;
  if ((site === 'same-origin' && (origin === null || ours)) || (site === null && ours)) {
    return ok(undefined);
  }
  return err(problem('crossSite', 'Writes are taken only from the pages of this server.'));
};
