/** Every error of the interface has this form: `{"error": {"code", "message", …}}`. The code is for programs. */
const statusOf = {
  malformed: 400,
  invalid: 400,
  signOn: 401,
  wrongPin: 401,
  crossSite: 403,
  notYou: 403,
  notYourRole: 403,
  notYourKiosk: 403,
  notYourBay: 403,
  notForForeman: 403,
  notForeman: 403,
  notFound: 404,
  unknownBay: 404,
  unknownJob: 404,
  unknownRevision: 404,
  method: 405,
  refused: 409,
  conflict: 409,
  idReused: 409,
  bayTaken: 409,
  notKept: 409,
  tooLarge: 413,
  contentType: 415,
  wait: 429,
  internal: 500,
  diskReadOnly: 503,
  unavailable: 503,
  diskFull: 507,
} as const;
export type ProblemCode = keyof typeof statusOf;

export interface ProblemFacts {
  /** In place of the problem's own code: why the job refused an event. */
  readonly code?: string;
  /** The number that the job's next event must have. */
  readonly expectedSeq?: number;
  /** Which event of the batch, from 0. */
  readonly index?: number;
  /** The job that is in the way. */
  readonly job?: string;
}

/** What every answer carries: it is never cached, never taken for a page, and never framed. */
const always = {
  'cache-control': 'no-store',
  'content-security-policy': "default-src 'none'; frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
};

export const answer = (
  value: unknown,
  status = 200,
  headers: readonly (readonly [string, string])[] = [],
): Response => {
  const response = Response.json(value, { status, headers: always });
  for (const [name, text] of headers) response.headers.append(name, text);
  return response;
};

/** An answer with no content. */
export const done = (headers: readonly (readonly [string, string])[] = []): Response => {
  const response = new Response(null, { status: 204, headers: always });
  for (const [name, text] of headers) response.headers.append(name, text);
  return response;
};

export const text = (content: string, contentType: string): Response =>
  new Response(content, { headers: { ...always, 'content-type': contentType } });

export const bytes = (content: Uint8Array<ArrayBuffer>, contentType: string): Response =>
  new Response(content, { headers: { ...always, 'content-type': contentType } });

/** An answer that goes on. Nothing on the way may keep or pack it, or what is new would wait there. */
export const stream = (content: ReadableStream<Uint8Array>, contentType: string): Response =>
  new Response(content, {
    headers: {
      ...always,
      'cache-control': 'no-store, no-transform',
      'content-type': contentType,
      'x-accel-buffering': 'no',
    },
  });

/** An error for a program and, in one sentence, for a person. */
export const problem = (
  code: ProblemCode,
  message: string,
  facts: ProblemFacts = {},
  headers: readonly (readonly [string, string])[] = [],
): Response => answer({ error: { code, message, ...facts } }, statusOf[code], headers);
