import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossingPattern } from '@/lib/fastening/bolt-circle';
import { aboutCentre, type HolePoint } from '@/lib/fastening/hole';
import { neighbours } from '@/lib/fastening/neighbours';
import { imbalance, roundOrder, tighteningOrder } from '@/lib/fastening/tightening-order';

const boltCircle = (count: number, radiusMm = 60, startDeg = 0): HolePoint[] =>
  Array.from({ length: count }, (_, k) => {
    const angle = ((startDeg + (360 * k) / count) * Math.PI) / 180;
    return {
      id: String(k + 1),
      xMm: 200 + radiusMm * Math.cos(angle),
      yMm: 150 + radiusMm * Math.sin(angle),
    };
  });

const rows = (columns: number, lines: number): HolePoint[] =>
  Array.from({ length: columns * lines }, (_, k) => ({
    id: String(k + 1),
    xMm: (k % columns) * 90,
    yMm: Math.floor(k / columns) * 40,
  }));

/** A made-up cover: an uneven ring of holes, some inside. */
const cover = fc
  .record({
    ring: fc.array(
      fc.record({
        shift: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
        reach: fc.double({ min: 0.7, max: 1.3, noNaN: true }),
      }),
      { minLength: 5, maxLength: 22 },
    ),
    inside: fc.array(
      fc.record({
        x: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
        y: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
      }),
      { maxLength: 4 },
    ),
    stretch: fc.double({ min: 1, max: 3, noNaN: true }),
  })
  .map(({ ring, inside, stretch }): HolePoint[] =>
    [
      ...ring.map(({ shift, reach }, k) => {
        const angle = ((k + shift) / ring.length) * 2 * Math.PI;
        return { x: reach * Math.cos(angle), y: reach * Math.sin(angle) };
      }),
      ...inside,
    ].map(({ x, y }, k) => ({ id: `h-${k + 1}`, xMm: 100 * stretch * x, yMm: 100 * y })),
  );

/** No two holes within a millimetre. */
const apart = (holes: readonly HolePoint[]): boolean =>
  holes.every((a) => holes.every((b) => a === b || Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) > 1));

/** The naive star: the crossing pattern over the holes as they come round the centre, whatever the shape. */
const naiveStar = (holes: readonly HolePoint[]): string[] => {
  const turned = roundOrder(holes);
  return crossingPattern(turned.length).flatMap((k) => turned[k] ?? []);
};

const neighboursInARow = (holes: readonly HolePoint[], order: readonly string[]): number => {
  const points = aboutCentre(holes) ?? [];
  const beside = neighbours(points);
  const index = (id: string | undefined) => points.findIndex((point) => point.id === id);
  return order.slice(1).filter((id, k) => beside[index(order[k])]?.has(index(id))).length;
};

/** By trying every order: the fewest neighbours in a row that this layout allows. */
const fewestPossible = (holes: readonly HolePoint[]): number => {
  const points = aboutCentre(holes) ?? [];
  const beside = neighbours(points);
  const walk = (last: number, left: readonly number[]): number =>
    left.length === 0
      ? 0
      : Math.min(
          ...left.map(
            (next) =>
              (beside[last]?.has(next) ? 1 : 0) +
              walk(
                next,
                left.filter((other) => other !== next),
              ),
          ),
        );
  return walk(
    -1,
    points.map((_, k) => k),
  );
};

describe('the crossing order of a bolt circle', () => {
  it.each([
    [1, '1'],
    [2, '1-2'],
    [3, '1-2-3'],
    [5, '1-3-5-2-4'],
    [6, '1-4-2-5-3-6'],
    [7, '1-4-7-3-6-2-5'],
    [10, '1-6-3-8-5-10-2-7-4-9'],
  ])('of %i bolts is the star or pairs of opposites', (count, order) => {
    expect(tighteningOrder(boltCircle(count)).join('-')).toBe(order);
  });

  it('never takes two neighbours in a row from five bolts on', () => {
    for (let count = 5; count <= 48; count += 1) {
      const holes = boltCircle(count);
      expect(neighboursInARow(holes, tighteningOrder(holes)), `${count} bolts`).toBe(0);
    }
  });

  it('takes two neighbours in a row once on four bolts, where every order does', () => {
    expect(neighboursInARow(boltCircle(4), tighteningOrder(boltCircle(4)))).toBe(1);
    expect(fewestPossible(boltCircle(4))).toBe(1);
  });

  it('allows for holes that are a little off the circle', () => {
    const holes = boltCircle(8).map((hole, k) => ({ ...hole, xMm: hole.xMm + (k % 2) * 0.8 }));
    expect(tighteningOrder(holes).join('-')).toBe('1-5-3-7-2-6-4-8');
  });

  it('follows the ids round, whichever way they are numbered', () => {
    const mirrored = boltCircle(8).map((hole) => ({ ...hole, yMm: -hole.yMm }));
    expect(tighteningOrder(mirrored).join('-')).toBe('1-5-3-7-2-6-4-8');
  });

  it('does not hold for a circle with a centre bolt, which is tightened first', () => {
    const holes = [...boltCircle(8), { id: 'centre', xMm: 200, yMm: 150 }];
    expect(tighteningOrder(holes)[0]).toBe('centre');
  });
});

describe('the order on a cover', () => {
  it('starts in the middle of two rows and ends at their corners', () => {
    expect(tighteningOrder(rows(5, 2)).join('-')).toBe('3-7-4-8-2-9-1-10-6-5');
    expect(tighteningOrder(rows(3, 2)).join('-')).toBe('2-4-3-5-1-6');
  });

  it('starts with the centre of a square of nine', () => {
    expect(tighteningOrder(rows(3, 3)).join('-')).toBe('5-1-9-2-8-4-6-7-3');
  });

  it('crosses a rectangle of four by its diagonals', () => {
    expect(tighteningOrder(rows(2, 2)).join('-')).toBe('1-4-3-2');
  });

  it('leaps along a single row', () => {
    expect(tighteningOrder(rows(4, 1)).join('-')).toBe('2-4-1-3');
    expect(tighteningOrder(rows(3, 1)).join('-')).toBe('2-1-3');
    expect(tighteningOrder(rows(2, 1)).join('-')).toBe('1-2');
  });

  it('keeps what is tight nearer the centre than index order and than a naive star, over many covers', () => {
    const covers = fc.sample(cover, { numRuns: 400, seed: 4 });
    const mean = (order: (holes: readonly HolePoint[]) => readonly string[]): number =>
      covers.reduce((sum, holes) => sum + imbalance(holes, order(holes)), 0) / covers.length;
    const ours = mean(tighteningOrder);
    expect(ours).toBeLessThan(0.25 * mean((holes) => holes.map(({ id }) => id)));
    expect(ours).toBeLessThan(0.7 * mean(naiveStar));
  });

  it('bounds the pull: on average the tight ones stay near the centre', () => {
    fc.assert(
      fc.property(cover, (holes) => {
        // Of few holes each weighs more: the first alone is as far off as it lies.
        const few = holes.length < 12;
        expect(imbalance(holes, tighteningOrder(holes))).toBeLessThan(few ? 0.5 : 0.25);
      }),
    );
  });

  it('takes two neighbours in a row only where every order does', () => {
    const few = fc
      .array(
        fc.record({ xMm: fc.integer({ min: 0, max: 6 }), yMm: fc.integer({ min: 0, max: 4 }) }),
        { minLength: 2, maxLength: 7 },
      )
      .map((places) => places.map((place, k) => ({ id: String(k + 1), ...place })))
      .filter(
        (holes) => new Set(holes.map(({ xMm, yMm }) => `${xMm} ${yMm}`)).size === holes.length,
      );
    fc.assert(
      fc.property(few, (holes) => {
        expect(neighboursInARow(holes, tighteningOrder(holes))).toBe(fewestPossible(holes));
      }),
    );
  });

  it('never takes two neighbours in a row on a cover of twelve or more', () => {
    fc.assert(
      fc.property(
        cover.filter((holes) => holes.length >= 12 && apart(holes)),
        (holes) => {
          expect(neighboursInARow(holes, tighteningOrder(holes))).toBe(0);
        },
      ),
    );
  });
});

describe('any tightening order', () => {
  const anyHoles = fc
    .array(fc.record({ xMm: fc.double(), yMm: fc.double() }), { maxLength: 16 })
    .map((places) => places.map((place, k) => ({ id: String(k + 1), ...place })));

  it('has every hole once, whatever the coordinates, and never throws', () => {
    fc.assert(
      fc.property(fc.oneof(anyHoles, cover), (holes) => {
        const ids = holes.map(({ id }) => id).sort();
        expect([...tighteningOrder(holes)].sort()).toEqual(ids);
        expect([...roundOrder(holes)].sort()).toEqual(ids);
      }),
    );
  });

  it('is the same wherever, however large, whichever way up and in whatever sequence the holes are listed', () => {
    const anyLayout = fc.oneof(
      cover,
      fc.integer({ min: 3, max: 24 }).map((count) => boltCircle(count)),
      fc.constantFrom(rows(5, 2), rows(3, 3), rows(4, 2), rows(6, 2)),
    );
    fc.assert(
      fc.property(
        anyLayout,
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.integer({ min: -500, max: 500 }),
        (holes, turn, scale, move) => {
          const elsewhere = holes
            .map(({ id, xMm, yMm }) => ({
              id,
              xMm: move + scale * (xMm * Math.cos(turn) - yMm * Math.sin(turn)),
              yMm: -move + scale * (xMm * Math.sin(turn) + yMm * Math.cos(turn)),
            }))
            .reverse();
          expect(tighteningOrder(elsewhere)).toEqual(tighteningOrder(holes));
        },
      ),
    );
  });

  it('puts a hole that is drawn twice on one spot last', () => {
    const holes = [...rows(4, 2), { id: '9', xMm: 90, yMm: 0 }];
    expect(tighteningOrder(holes).at(-1)).toBe('9');
  });

  it('has at most six neighbours to keep apart, so the search for it stays short', () => {
    const grid = Array.from({ length: 30 }, (_, k) => ({
      id: String(k),
      xMm: (k % 6) + (Math.floor(k / 6) % 2) / 2,
      yMm: (Math.floor(k / 6) * Math.sqrt(3)) / 2,
    }));
    const layouts = fc.oneof(
      cover.filter(apart),
      fc.constantFrom(grid, [...boltCircle(24), { id: 'hub', xMm: 200, yMm: 150 }]),
    );
    fc.assert(
      fc.property(layouts, (holes) => {
        const most = Math.max(...neighbours(aboutCentre(holes) ?? []).map((beside) => beside.size));
        expect(most).toBeLessThanOrEqual(6);
      }),
    );
  });

  it('stays quick where a bad drawing puts many holes on few spots', () => {
    const holes = Array.from({ length: 80 }, (_, k) => ({ id: String(k), xMm: k % 3, yMm: k % 2 }));
    expect(new Set(tighteningOrder(holes)).size).toBe(80);
  });

  it('of nothing is nothing', () => {
    expect(tighteningOrder([])).toEqual([]);
    expect(roundOrder([])).toEqual([]);
    expect(imbalance([], ['1'])).toBe(0);
  });
});

describe('the check round', () => {
  it('goes once round the joint from the lowest id', () => {
    expect(roundOrder(boltCircle(6, 60, 200)).join('-')).toBe('1-2-3-4-5-6');
    expect(roundOrder(rows(3, 2)).join('-')).toBe('1-2-3-6-5-4');
  });
});
