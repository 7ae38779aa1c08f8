import { expect } from 'vitest';

/** A browser that has signed on: what the store calls it, and what it sends with each request. */
export interface SignedOnBrowser {
  readonly device: string;
  readonly cookie: string;
}

/** Signs on without a page: `/api/session` at a kiosk, `/api/foreman` at a screen of the foreman's own. */
export const signOnAt = async (
  address: string,
  path: '/api/session' | '/api/foreman',
  who: { readonly person: string; readonly pin: string | undefined; readonly bay?: string },
): Promise<SignedOnBrowser> => {
  const response = await fetch(`${address}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: address },
    body: JSON.stringify(who),
  });
  expect(response.status).toBe(200);
  const { device } = (await response.json()) as { device: string };
  const cookies = response.headers.getSetCookie().map((one) => one.split(';')[0]);
  return { device, cookie: cookies.join('; ') };
};
