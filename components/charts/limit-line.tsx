/** Each kind of line has its own stroke, so that none is told by its colour alone. */
export type LimitKind = 'centre' | 'control' | 'spec';

export interface Limit {
  readonly kind: LimitKind;
  /** "Spec max 24.2" */
  readonly words: string;
  readonly value: number;
  /** On which side of a specification limit lies what is out of it. */
  readonly out?: 'above' | 'below';
}

const looks = {
  centre: { strokeWidth: 1.5, className: 'stroke-quiet' },
  control: { strokeWidth: 1.5, strokeDasharray: '7 4', className: 'stroke-ink' },
  spec: { strokeWidth: 2.5, className: 'stroke-bad' },
} as const;

const HATCH = 14;

/** The line of a limit from `from` to `to` at the height `y`; a specification limit is hatched on its far side. */
export function LimitLine({
  kind,
  out,
  from,
  to,
  y,
}: Pick<Limit, 'kind' | 'out'> & {
  readonly from: number;
  readonly to: number;
  readonly y: number;
}) {
  const strokes: string[] = [];
  const rise = out === 'above' ? -5 : 5;
  if (kind === 'spec')
    for (let at = from; at + 5 <= to; at += HATCH) strokes.push(`M${at} ${y}l5 ${rise}`);
  return (
    <>
      <line x1={from} x2={to} y1={y} y2={y} {...looks[kind]} />
      {strokes.length === 0 ? null : (
        <path d={strokes.join('')} strokeWidth={1.2} className="stroke-bad" />
      )}
    </>
  );
}
