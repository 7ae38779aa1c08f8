/** The outcome of something that can fail for a reason the caller must handle. Nothing in `lib` throws across a border. */
export type Result<T, E> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: E };

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });
export const err = <E>(error: E): { readonly ok: false; readonly error: E } => ({
  ok: false,
  error,
});

/** For the end of an exhaustive switch: does not compile when a case is missing. */
export const unreachable = (never: never): never => {
  throw new Error(`unreachable: ${JSON.stringify(never)}`);
};

/** What a thrown value says, in one line for people. */
export const errorText = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);
