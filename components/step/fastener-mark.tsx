/** How a fastener stands in the step on the screen. */
export type MarkState = 'waiting' | 'current' | 'done' | 'bad' | 'plain';

export interface FastenerMarkData {
  readonly fastener: string;
  readonly label: string;
  readonly hole: string;
  readonly lengthMm?: number | undefined;
  /** Place in the tightening order, from 1. */
  readonly ordinal?: number | undefined;
  readonly state: MarkState;
}

const ordinals = new Intl.PluralRules('en-GB', { type: 'ordinal' });
const endings: Readonly<Record<string, string>> = { one: 'st', two: 'nd', few: 'rd' };

/** "1st", "2nd", "11th": unlike a label, never mistaken for one. */
export const ordinalText = (n: number): string => `${n}${endings[ordinals.select(n)] ?? 'th'}`;

export const markWords: Readonly<Record<MarkState, string>> = {
  waiting: 'waiting',
  current: 'now',
  done: 'done',
  bad: 'not in spec',
  plain: '',
};

/**
 * One fastener on a drawing. The state is told by shape as well as colour: dashed ring waits, a filled disc in a
 * cross-hair is now, a disc with a tick is done, a square with a cross is not in spec.
 */
export function FastenerMark({
  mark,
  x,
  y,
  size,
}: {
  readonly mark: FastenerMarkData;
  readonly x: number;
  readonly y: number;
  /** Radius of the mark in drawing units. */
  readonly size: number;
}) {
  const { state } = mark;
  const line = size * 0.13;
  const text = {
    fontSize: size * 1.15,
    dominantBaseline: 'central',
    textAnchor: 'middle',
  } as const;
  return (
    <g data-fastener={mark.fastener} data-state={state}>
      {state === 'current' ? (
        <path
          d={`M${x - size * 1.75} ${y}h${size * 0.5}M${x + size * 1.25} ${y}h${size * 0.5}M${x} ${y - size * 1.75}v${size * 0.5}M${x} ${y + size * 1.25}v${size * 0.5}`}
          className="stroke-act"
          strokeWidth={line * 2}
        />
      ) : null}
      {state === 'bad' ? (
        <rect x={x - size} y={y - size} width={size * 2} height={size * 2} className="fill-bad" />
      ) : (
        <circle
          cx={x}
          cy={y}
          r={state === 'current' ? size * 1.15 : size}
          strokeWidth={state === 'current' ? line * 1.6 : line}
          strokeDasharray={state === 'waiting' ? `${line * 2.2} ${line * 1.6}` : undefined}
          className={
            state === 'current'
              ? 'fill-act stroke-act'
              : state === 'done'
                ? 'fill-surface stroke-good'
                : 'fill-surface stroke-ink'
          }
        />
      )}
      <text
        {...text}
        x={x}
        y={y}
        className={
          state === 'current'
            ? 'fill-act-ink font-bold'
            : state === 'bad'
              ? 'fill-surface font-bold'
              : 'fill-ink font-bold'
        }
      >
        {mark.label}
      </text>
      {state === 'done' ? (
        <g transform={`translate(${x + size * 0.85} ${y - size * 0.85})`}>
          <circle r={size * 0.55} className="fill-good" />
          <path
            d={`M${-size * 0.26} ${size * 0.02}l${size * 0.18} ${size * 0.2}l${size * 0.34} ${-size * 0.42}`}
            className="stroke-surface"
            fill="none"
            strokeWidth={line}
            strokeLinecap="round"
          />
        </g>
      ) : null}
    </g>
  );
}
