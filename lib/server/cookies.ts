/** The session's token, and the secret that stands for the kiosk's browser; pages can read neither. */
export const sessionCookie = 'baycall-session';
export const deviceCookie = 'baycall-device';
/** The session of a foreman at a screen of their own. */
export const foremanCookie = 'baycall-foreman';

/** The value of a cookie, from a Cookie header. */
export const cookieIn = (header: string | null, name: string): string | undefined => {
  for (const pair of (header ?? '').split(';')) {
    const [key, ...rest] = pair.split('=');
    if (key?.trim() === name) return rest.join('=').trim();
  }
  return undefined;
};

const isHttps = (request: Request): boolean =>
  (request.headers.get('x-forwarded-proto') ?? new URL(request.url).protocol.slice(0, -1))
    .split(',')[0]
    ?.trim() === 'https';

/** A Set-Cookie header. The values are made here and need no quoting. */
export const setCookie = (
  request: Request,
  name: string,
  value: string,
  maxAgeS: number,
): readonly [string, string] => [
  'set-cookie',
  `${name}=${value}; Path=/; HttpOnly; SameSite=Strict; Max-Age=${maxAgeS}${isHttps(request) ? '; Secure' : ''}`,
];
