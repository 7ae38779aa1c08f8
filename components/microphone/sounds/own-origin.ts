type Fetch = typeof fetch;

const urlOf = (asked: Parameters<Fetch>[0], base: string): URL =>
  new URL(asked instanceof Request ? asked.url : asked, base);

/**
 * A `fetch` that answers "gone" for every other origin without asking it. The classifier's package sends usage
 * statistics once a minute and has no switch; the policy would stop each with a line on the console, so that real
 * trouble drowned in them.
 */
export const ownOriginOnly =
  (origin: string, inner: Fetch): Fetch =>
  (asked, options) => {
    const url = urlOf(asked, `${origin}/`);
    return url.origin === origin || url.protocol === 'data:'
      ? inner(asked, options)
      : Promise.resolve(new Response(null, { status: 410 }));
  };
