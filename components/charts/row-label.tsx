import { LINE } from './chart-frame';
import { wrapLabel } from './wrap-label';

/** What a row is about, in at most two lines that end at `x`, about its middle; a link where it leads somewhere. */
export function RowLabel({
  text,
  x,
  y,
  width,
  href,
}: {
  readonly text: string;
  readonly x: number;
  /** The middle of the row. */
  readonly y: number;
  /** In characters. */
  readonly width: number;
  readonly href?: string | undefined;
}) {
  const lines = wrapLabel(text, { width, lines: 2 });
  const top = y - ((lines.length - 1) * LINE) / 2 + 4;
  const label = (
    <text textAnchor="end" className={`fill-ink ${href === undefined ? '' : 'underline'}`}>
      {lines.map((line, at) => (
        <tspan key={at} x={x} y={top + at * LINE}>
          {line}{' '}
        </tspan>
      ))}
    </text>
  );
  if (href === undefined) return label;
  return (
    <a href={href}>
      <title>{text}</title>
      <rect x={0} y={y - 13} width={x} height={26} fill="transparent" />
      {label}
    </a>
  );
}
