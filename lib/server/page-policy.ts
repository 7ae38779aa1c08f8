/**
 * What a page may do: only what comes from this server. Scripts need the nonce of the answer or come from our own
 * files; none is made from text. The recogniser's worker brings its own policy (lib/hearing). `development` lets the
 * framework's development server through.
 */
export const pagePolicy = (nonce: string, development: boolean): string =>
  [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}'${development ? " 'unsafe-eval'" : ''}`,
    development ? "style-src 'self' 'unsafe-inline'" : `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data:",
    "media-src 'self' blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');

/** What goes with every page beside its policy. */
export const pageHeaders: Readonly<Record<string, string>> = {
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'microphone=(self), camera=(), geolocation=(), payment=(), usb=()',
  'referrer-policy': 'same-origin',
  'x-content-type-options': 'nosniff',
};
