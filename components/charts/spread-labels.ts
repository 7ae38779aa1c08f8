/**
 * Where labels go that would lie on each other: in the order they came, each as near to the place it names as the
 * others let it, at least `gap` apart, and between `from` and `to` as long as they fit there.
 */
export const spreadLabels = (
  wanted: readonly number[],
  { gap, from, to }: { readonly gap: number; readonly from: number; readonly to: number },
): readonly number[] => {
  const order = [...wanted.entries()].sort(([, a], [, b]) => a - b);
  const placed: number[] = [];
  for (const [, place] of order) {
    const least = placed.length === 0 ? from : (placed.at(-1) ?? from) + gap;
    placed.push(Math.max(place, least));
  }
  let most = to;
  for (let at = placed.length - 1; at >= 0; at -= 1) {
    placed[at] = Math.min(placed[at] ?? most, most);
    most = (placed[at] ?? most) - gap;
  }
  const spread = wanted.slice();
  for (const [rank, [index]] of order.entries()) spread[index] = placed[rank] ?? 0;
  return spread;
};
