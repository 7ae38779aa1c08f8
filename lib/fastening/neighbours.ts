import { distance, type JointPoint } from './hole';

/** Distances that differ by less than this part are equal: symmetrical patterns must not hang on the last digit. */
const EQUAL = 1e-6;

/**
 * Which holes are neighbours: those pairs between which no third hole lies. A third hole lies between when it is
 * no farther from either than they are from each other, and nearer to one (the relative neighbourhood graph of
 * Toussaint, 1980, with ties settled so that no hole has more than six). On a ring these are the two beside each
 * hole, on rows and grids those next in line. Index i of the answer belongs to `points[i]`.
 */
export const neighbours = (points: readonly JointPoint[]): readonly ReadonlySet<number>[] =>
  points.map(
    (a, i) =>
      new Set(
        points.flatMap((b, j) => {
          const apart = distance(a, b);
          const between = points.some((c, k) => {
            if (k === i || k === j) return false;
            const [toA, toB] = [distance(a, c), distance(b, c)];
            return (
              Math.max(toA, toB) <= apart * (1 + EQUAL) && Math.min(toA, toB) < apart * (1 - EQUAL)
            );
          });
          return i === j || between ? [] : [j];
        }),
      ),
  );
