/** Seeded chance: the same seed gives the same numbers on every machine. */
export interface Chance {
  /** Even in [0, 1). */
  next(): number;
  /** True with this probability. */
  is(probability: number): boolean;
  pick<T>(all: readonly [T, ...T[]]): T;
  /** One of the names, each as likely as its weight. */
  weighted<T>(all: readonly [readonly [T, number], ...(readonly [T, number])[]]): T;
  between(from: number, to: number): number;
  /** Normal, by Box and Muller. */
  normal(mean: number, sigma: number): number;
  uuid(): string;
}

/** A number in [0, 1) that follows from a text alone (FNV-1a, 32 bits). */
export const shareOf = (text: string): number => {
  let hash = 0x811c9dc5;
  for (const letter of text) {
    hash ^= letter.codePointAt(0) ?? 0;
    hash = Math.imul(hash, 0x01000193) >>> 0;
  }
  // The last bits of FNV mix badly: stir once more.
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d) >>> 0;
  return ((hash ^ (hash >>> 12)) >>> 0) / 2 ** 32;
};

/** Mulberry32, a 32-bit generator in the public domain (from memory): good enough for a demo, and for nothing else. */
export const chance = (seed: string): Chance => {
  let state = Math.floor(shareOf(seed) * 2 ** 32);
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const hex = (length: number): string =>
    Array.from({ length }, () => Math.floor(next() * 16).toString(16)).join('');
  return {
    next,
    is: (probability) => next() < probability,
    pick: (all) => all[Math.floor(next() * all.length)] ?? all[0],
    weighted(all) {
      let left = next() * all.reduce((sum, [, weight]) => sum + weight, 0);
      for (const [name, weight] of all) {
        left -= weight;
        if (left < 0) return name;
      }
      return all[0][0];
    },
    between: (from, to) => from + next() * (to - from),
    normal(mean, sigma) {
      const radius = Math.sqrt(-2 * Math.log(1 - next()));
      return mean + sigma * radius * Math.cos(2 * Math.PI * next());
    },
    uuid: () => `${hex(8)}-${hex(4)}-4${hex(3)}-8${hex(3)}-${hex(12)}`,
  };
};
