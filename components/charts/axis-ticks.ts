import { scaleLinear } from 'd3-scale';

/** From the lowest to the highest of all that must be seen, with a twentieth of room on either side. */
export const domainOf = (seen: Iterable<number>): readonly [number, number] => {
  let low = Infinity;
  let high = -Infinity;
  for (const value of seen) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  if (low > high) return [0, 1];
  const size = Math.max(Math.abs(low), Math.abs(high));
  // What is closer together than a double tells apart is one value.
  const room =
    high - low > Math.max(size * 1e-9, 1e-12) ? (high - low) / 20 : Math.max(size / 20, 0.5);
  return [low - room, high + room];
};

/** Round numbers of a scale from nought, and the words of each; counts have no fractions. */
export const countTicks = (most: number, wanted: number): readonly number[] =>
  scaleLinear()
    .domain([0, Math.max(1, most)])
    .ticks(wanted)
    .filter(Number.isInteger);

/** Which of the days in a row are written on an axis: the first of each, as many as keep `gap` places apart. */
export const dayTicks = (
  days: readonly string[],
  gap: number,
): readonly { readonly at: number; readonly day: string }[] => {
  const ticks: { at: number; day: string }[] = [];
  for (const [at, day] of days.entries()) {
    const last = ticks.at(-1);
    if (day === days[at - 1]) continue;
    if (last === undefined || at - last.at >= gap) ticks.push({ at, day });
  }
  return ticks;
};
