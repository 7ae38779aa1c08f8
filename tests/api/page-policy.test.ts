import { NextRequest } from 'next/server';
import { expect, test } from 'vitest';
import { proxy } from '@/proxy';

const page = () => proxy(new NextRequest('http://kiosk.test/bay/bay-1'));
const policyOf = (response: Response): ReadonlyMap<string, readonly string[]> =>
  new Map(
    (response.headers.get('content-security-policy') ?? '').split('; ').map((directive) => {
      const [name = '', ...sources] = directive.split(' ');
      return [name, sources];
    }),
  );

test('a page runs only our own scripts and those with the nonce of this one answer', () => {
  const first = policyOf(page()).get('script-src') ?? [];
  const second = policyOf(page()).get('script-src') ?? [];
  expect(first).toEqual([
    "'self'",
    expect.stringMatching(/^'nonce-[A-Za-z0-9+/]{22}=='$/) as string,
  ]);
  expect(second).not.toEqual(first);
});

test('no page makes scripts from text, talks to anybody else, or is framed', () => {
  const policy = policyOf(page());
  const all = [...policy.values()].flat();
  expect(all).not.toContain("'unsafe-inline'");
  expect(all).not.toContain("'unsafe-eval'");
  expect(all).not.toContain("'wasm-unsafe-eval'");
  expect(policy.get('connect-src')).toEqual(["'self'"]);
  expect(policy.get('worker-src')).toEqual(["'self'"]);
  expect(policy.get('default-src')).toEqual(["'self'"]);
  for (const nothing of ['object-src', 'base-uri', 'frame-ancestors']) {
    expect(policy.get(nothing)).toEqual(["'none'"]);
  }
});

test('the microphone is for this server’s pages alone', () => {
  const { headers } = page();
  expect(headers.get('permissions-policy')).toContain('microphone=(self)');
  expect(headers.get('cross-origin-opener-policy')).toBe('same-origin');
  expect(headers.get('x-content-type-options')).toBe('nosniff');
  expect(headers.get('referrer-policy')).toBe('same-origin');
});
