import { useId, type ReactNode } from 'react';
import { DataTable, type TableFacts } from './data-table';

/** Units of a drawing: half the width of the page, or the whole of it. Letters are the same size in both. */
export const HALF = 480;
export const WHOLE = 920;
export const LETTERS = 11.5;
export const LINE = 13;

export interface ChartFrameProps {
  readonly title: string;
  /** What there is to see, in sentences. */
  readonly says: string;
  readonly width: typeof HALF | typeof WHOLE;
  readonly height: number;
  readonly children: ReactNode;
  /** It holds links; an image could not. */
  readonly linked?: boolean;
  readonly legend?: ReactNode;
  readonly table: TableFacts;
}

/** A drawing with its name, what it says in words, and its table, which holds every value that is drawn. */
export function ChartFrame(props: ChartFrameProps) {
  const { title, says, width, height, children, linked = false, legend, table } = props;
  const id = useId();
  return (
    <figure className={`flex min-w-0 flex-col gap-2 ${width === HALF ? 'max-w-[68rem]' : ''}`}>
      <h3 className="text-body font-bold">{title}</h3>
      <p className="text-note">{says}</p>
      <div className="relative overflow-x-auto" tabIndex={0} role="group" aria-label={title}>
        <svg
          viewBox={`0 0 ${width} ${height}`}
          role={linked ? 'group' : 'img'}
          aria-labelledby={`${id}title ${id}desc`}
          className={`h-auto w-full font-sans ${width === WHOLE ? 'min-w-[50rem]' : 'min-w-[28rem]'}`}
          fontSize={LETTERS}
        >
          <title id={`${id}title`}>{title}</title>
          <desc id={`${id}desc`}>{says}</desc>
          {children}
        </svg>
      </div>
      {legend}
      <details className="text-note">
        <summary className="inline-flex min-h-[2rem] cursor-pointer items-center underline">
          Table: {title}
        </summary>
        <div
          className="relative mt-2 max-h-[40rem] overflow-auto"
          tabIndex={0}
          role="group"
          aria-label={table.caption}
        >
          <DataTable {...table} />
        </div>
      </details>
    </figure>
  );
}
