import { screen } from './dom';

/** What stands in the cells of a table, row by row, its head first; also where it is folded away. */
export const cellsOf = (caption: string): readonly (readonly string[])[] =>
  [...screen.getByRole<HTMLTableElement>('table', { name: caption, hidden: true }).rows].map(
    ({ cells }) => [...cells].map(({ textContent }) => textContent),
  );
