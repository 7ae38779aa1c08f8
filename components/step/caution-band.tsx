import type { Caution } from '@/lib/procedure';

type Signal = Caution['signal'];

/** Panels of ANSI Z535.4 (colours from memory of the standard; contrast computed: 5.9, 8.5, 14.4 and 6.9 to one). */
const panels: Readonly<
  Record<Signal, { panel: string; edge: string; triangle?: string; mark?: string }>
> = {
  DANGER: {
    panel: 'bg-danger text-white',
    edge: 'border-danger',
    triangle: 'fill-white',
    mark: 'stroke-danger',
  },
  WARNING: {
    panel: 'bg-warning text-black',
    edge: 'border-warning',
    triangle: 'fill-black',
    mark: 'stroke-warning',
  },
  CAUTION: {
    panel: 'bg-caution text-black',
    edge: 'border-caution',
    triangle: 'fill-black',
    mark: 'stroke-caution',
  },
  NOTICE: { panel: 'bg-notice text-white', edge: 'border-notice' },
};

/** The safety alert triangle, drawn for this screen. NOTICE (damage, nobody hurt) carries none. */
function AlertTriangle({ signal }: { signal: Signal }) {
  const { triangle, mark } = panels[signal];
  if (triangle === undefined || mark === undefined) return null;
  return (
    <svg
      viewBox="0 0 48 44"
      aria-hidden="true"
      data-alert={signal}
      className="h-[1.1em] w-[1.2em] shrink-0"
    >
      <path
        className={triangle}
        d="M21.4 3.5a3 3 0 0 1 5.2 0L46 37.5A3 3 0 0 1 43.4 42H4.6A3 3 0 0 1 2 37.5Z"
      />
      <path
        className={mark}
        d="M24 14v13.5M24 34.5v.5"
        fill="none"
        strokeWidth="5.5"
        strokeLinecap="round"
      />
    </svg>
  );
}

/** One caution: signal word and symbol, then hazard, consequence and how to avoid it, before the step it concerns. */
export function CautionBand({ caution }: { caution: Caution }) {
  const { panel, edge } = panels[caution.signal];
  return (
    <section
      aria-label={`${caution.signal}: ${caution.hazard}`}
      className={`flex overflow-hidden rounded-block border-4 bg-surface ${edge}`}
    >
      <p
        className={`flex shrink-0 flex-col items-center justify-center gap-1 px-4 py-2 text-glance font-bold ${panel}`}
      >
        <AlertTriangle signal={caution.signal} />
        {caution.signal}
      </p>
      <p className="px-5 py-2 text-glance">
        <strong>{caution.hazard}</strong> {caution.consequence} {caution.avoidance}
      </p>
    </section>
  );
}

/** All cautions of a step, the gravest first. */
export function CautionBands({ cautions }: { cautions: readonly Caution[] }) {
  const gravest: readonly Signal[] = ['DANGER', 'WARNING', 'CAUTION', 'NOTICE'];
  return (
    <>
      {gravest.flatMap((signal) =>
        cautions
          .filter((caution) => caution.signal === signal)
          .map((caution) => <CautionBand key={`${signal} ${caution.hazard}`} caution={caution} />),
      )}
    </>
  );
}
