import { randomBytes } from 'node:crypto';
import { NextResponse, type NextRequest } from 'next/server';
import { pageHeaders, pagePolicy } from '@/lib/server/page-policy';

/** Gives each page a policy with a nonce of its own, which the framework puts on its scripts. */
export function proxy(request: NextRequest): NextResponse {
  const nonce = randomBytes(16).toString('base64');
  const policy = pagePolicy(nonce, process.env.NODE_ENV === 'development');
  const headers = new Headers(request.headers);
  headers.set('content-security-policy', policy);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set('content-security-policy', policy);
  for (const [name, value] of Object.entries(pageHeaders)) response.headers.set(name, value);
  return response;
}

/** Pages only: the interface and the hearing set their own headers, and a body must not be read twice. */
export const config = { matcher: '/((?!api/|hearing/|_next/static/).*)' };
