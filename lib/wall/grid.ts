/** How the bays are laid out, and how much each can show. */
export interface Grid {
  readonly columns: number;
  readonly rows: number;
  /**
   * What a card has room for in letters that are read from afar. all: everything. some: bay, vehicle, and what is
   * wanted or the step. short: bay, and what is wanted or the vehicle. sign: bay and sign alone.
   */
  readonly detail: 'sign' | 'short' | 'some' | 'all';
}

/** Columns and rows on a screen of 16:9, from the roomiest; each leaves no row empty for the numbers of bays it is for. */
const grids = [
  [1, 1],
  [2, 1],
  [3, 1],
  [2, 2],
  [3, 2],
  [4, 2],
  [4, 3],
  [5, 3],
  [6, 3],
  [6, 4],
  [7, 4],
  [8, 4],
  [8, 5],
  [9, 5],
  [10, 5],
  [10, 6],
] as const;

/** The wall is made for so many bays; a larger shop is shown as small as need be. */
export const mostBays = 60;

const detailOf = (columns: number, rows: number): Grid['detail'] => {
  if (columns * rows <= 4) return 'all';
  if (columns <= 4) return 'some';
  return columns <= 6 ? 'short' : 'sign';
};

/** The grid for so many bays. */
export const gridFor = (bays: number): Grid => {
  const fitting = grids.find(([columns, rows]) => columns * rows >= bays);
  const columns = fitting?.[0] ?? 12;
  const rows = fitting?.[1] ?? Math.ceil(bays / columns);
  return { columns, rows, detail: detailOf(columns, rows) };
};
