/** How a fastener stands in the step on the screen. */
export type MarkState = 'waiting' | 'current' | 'done' | 'bad' | 'plain';

export interface FastenerMarkData {
  readonly fastener: string;
  readonly label: string;
  readonly noun: string;
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

const stateWords: Readonly<Record<MarkState, string>> = {
  waiting: 'waiting',
  current: 'now',
  done: 'done',
  bad: 'not in spec',
  plain: 'shown',
};

/** "bolt 3 waiting, 5th in the order, 45 mm long" */
export const markText = ({ noun, label, state, ordinal, lengthMm }: FastenerMarkData): string =>
  [
    `${noun} ${label} ${stateWords[state]}`,
    ...(ordinal === undefined ? [] : [`${ordinalText(ordinal)} in the order`]),
    ...(lengthMm === undefined ? [] : [`${lengthMm} mm long`]),
  ].join(', ');

interface Drawn {
  readonly mark: FastenerMarkData;
  readonly x: number;
  readonly y: number;
  /** Radius of the mark in drawing units. */
  readonly size: number;
}

function Tick({ x, y, size }: { x: number; y: number; size: number }) {
  return (
    <g transform={`translate(${x + size * 0.85} ${y - size * 0.85})`}>
      <circle r={size * 0.55} className="fill-good" />
      <path
        d={`M${-size * 0.26} ${size * 0.02}l${size * 0.18} ${size * 0.2}l${size * 0.34} ${-size * 0.42}`}
        className="stroke-surface"
        fill="none"
        strokeWidth={size * 0.13}
        strokeLinecap="round"
      />
    </g>
  );
}

/** Short strokes outside the mark, at three, nine, six and twelve o'clock. */
const crossHair = (x: number, y: number, size: number): string => {
  const from = size * 1.25;
  const long = size * 0.5;
  return `M${x - from - long} ${y}h${long}M${x + from} ${y}h${long}M${x} ${y - from - long}v${long}M${x} ${y + from}v${long}`;
};

const ringLooks: Readonly<Record<Exclude<MarkState, 'bad'>, string>> = {
  current: 'fill-act stroke-act',
  done: 'fill-surface stroke-good',
  waiting: 'fill-surface stroke-ink',
  plain: 'fill-surface stroke-ink',
};

const textLooks: Readonly<Record<MarkState, string>> = {
  current: 'fill-act-ink',
  bad: 'fill-surface',
  done: 'fill-ink',
  waiting: 'fill-ink',
  plain: 'fill-ink',
};

/**
 * One fastener on a drawing. The state is told by shape as well as colour: a dashed ring waits, a filled disc in a
 * cross-hair is now, a ring with a tick is done, a filled square is not in spec.
 */
export function FastenerMark({ mark, x, y, size }: Drawn) {
  const { state } = mark;
  const line = size * 0.13;
  return (
    <>
      {state === 'current' ? (
        <path d={crossHair(x, y, size)} className="stroke-act" strokeWidth={line * 2} />
      ) : null}
      {state === 'bad' ? (
        <rect x={x - size} y={y - size} width={size * 2} height={size * 2} className="fill-bad" />
      ) : (
        <circle
          cx={x}
          cy={y}
          r={state === 'current' ? size * 1.1 : size}
          strokeWidth={state === 'current' ? line * 1.6 : line}
          strokeDasharray={state === 'waiting' ? `${line * 2.2} ${line * 1.6}` : undefined}
          className={ringLooks[state]}
        />
      )}
      <text
        x={x}
        y={y}
        fontSize={size * (mark.label.length > 2 ? 0.8 : 1.15)}
        dominantBaseline="central"
        textAnchor="middle"
        className={`font-bold ${textLooks[state]}`}
      >
        {mark.label}
      </text>
      {state === 'done' ? <Tick x={x} y={y} size={size} /> : null}
    </>
  );
}

/**
 * The same as a target: whoever touches it says that the next value is of this one. The field around it is as large
 * as a glove needs; the ring shows the keyboard's place.
 */
export function FastenerButton({
  onPress,
  ...drawn
}: Drawn & {
  /** Absent for a lone fastener: there is nothing to choose. */
  readonly onPress: (() => void) | undefined;
}) {
  const { mark, x, y, size } = drawn;
  if (onPress === undefined)
    return (
      <g
        role="img"
        aria-label={markText(mark)}
        data-fastener={mark.fastener}
        data-state={mark.state}
      >
        <FastenerMark {...drawn} />
      </g>
    );
  return (
    <g
      role="button"
      tabIndex={0}
      aria-label={markText(mark)}
      data-fastener={mark.fastener}
      data-state={mark.state}
      className="group cursor-pointer outline-none"
      onClick={onPress}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        onPress();
      }}
    >
      <circle
        cx={x}
        cy={y}
        r={size * 1.45}
        strokeWidth={size * 0.2}
        className="fill-transparent stroke-transparent group-focus-visible:stroke-ink"
      />
      <FastenerMark {...drawn} />
    </g>
  );
}
