/** A function as a script that runs it in a page. What runs TypeScript here names functions by a helper of its own. */
export const inPage = (run: () => void): string =>
  `globalThis.__name ??= (named) => named; (${String(run)})();`;
