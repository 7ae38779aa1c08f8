/** An instant (RFC 3339, any offset) in UTC with its offset written out: "2026-03-02T09:00:00.000+00:00". */
export const utcInstant = (at: string): string =>
  `${new Date(at).toISOString().slice(0, -1)}+00:00`;
