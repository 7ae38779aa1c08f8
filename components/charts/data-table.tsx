import type { ReactNode } from 'react';

export interface TableRow {
  readonly key: string;
  /** What the row is about, then one cell for each further column. */
  readonly cells: readonly ReactNode[];
}

export interface TableFacts {
  readonly caption: string;
  readonly columns: readonly string[];
  readonly rows: readonly TableRow[];
}

const cell = 'border-b border-line px-3 py-1 text-left align-top';

/** A table whose first column names the rows. */
export function DataTable({ caption, columns, rows }: TableFacts) {
  return (
    <table className="border-collapse text-note">
      <caption className="pb-2 text-left font-bold">{caption}</caption>
      <thead>
        <tr>
          {columns.map((name) => (
            <th key={name} scope="col" className={`${cell} border-b-2 border-edge`}>
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ key, cells: [first, ...rest] }) => (
          <tr key={key}>
            <th scope="row" className={`${cell} font-normal`}>
              {first}
            </th>
            {rest.map((one, column) => (
              <td key={columns[column + 1]} className={cell}>
                {one}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
