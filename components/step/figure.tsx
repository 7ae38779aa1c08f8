import type { ReactNode } from 'react';
import { toleranceInterval, type Specification, type ToleranceInterval } from '@/lib/fastening';
import type { SetOnWrench } from '@/lib/kiosk';
import type { Verdict } from '@/lib/metrology';
import {
  bothTorques,
  bothTorqueWindows,
  digitsFor,
  formatQuantity,
  formatWindow,
  newtonMetres,
  quantityOf,
} from '@/lib/quantity';
import { WindowScale } from './window-scale';

export interface FigureProps {
  /** What is measured: "Cover bolts, final pass". */
  readonly label: string;
  readonly specification: Specification;
  /** The window to aim for where a safety-critical reading must be proven with the tool in use, canonical unit. */
  readonly proven?: ToleranceInterval | undefined;
  readonly reading?: { readonly canonical: number; readonly verdict: Verdict } | undefined;
  /** What stands beside the label: the tool to take. */
  readonly beside?: ReactNode;
  /** An adapter is on the wrench: what to set on it stands large, the sheet's figure behind. */
  readonly set?: SetOnWrench | undefined;
}

interface Shown {
  readonly main: string;
  readonly window: string;
}

/** The figure in the units that the trade reads: torque always in N·m and lbf·ft, anything else in the sheet's own. */
const shownFigures = (
  specification: Specification,
  interval: ToleranceInterval,
): readonly Shown[] => {
  const { target, lower, upper } = interval;
  const lone = target ?? (lower === undefined ? upper : upper === undefined ? lower : undefined);
  if (quantityOf(specification.unit) === 'torque') {
    const windows = bothTorqueWindows(interval);
    const mains = lone === undefined ? windows : bothTorques(newtonMetres(lone), interval);
    return [
      { main: mains.newtonMetres, window: windows.newtonMetres },
      { main: mains.poundForceFeet, window: windows.poundForceFeet },
    ];
  }
  const window = formatWindow(interval, specification.unit);
  return [
    {
      main:
        target === undefined
          ? window
          : formatQuantity(target, specification.unit, digitsFor(interval, specification.unit)),
      window,
    },
  ];
};

const setFigures = ({ torqueNm, window }: SetOnWrench): readonly Shown[] => {
  const mains = bothTorques(newtonMetres(torqueNm), window);
  const windows = bothTorqueWindows(window);
  return [
    { main: mains.newtonMetres, window: windows.newtonMetres },
    { main: mains.poundForceFeet, window: windows.poundForceFeet },
  ];
};

/** One wanted value as large as the screen allows: the target, what is accepted, and the reading on the same rule. */
export function Figure({ label, specification, proven, reading, beside, set }: FigureProps) {
  const interval = toleranceInterval(specification);
  if (interval === undefined)
    return (
      <section aria-label={label} className="border-l-8 border-line pl-5">
        <h2 className="text-body text-quiet">{label}</h2>
        <p className="text-read font-bold">No figure on the sheet</p>
        <p className="text-body text-quiet">
          What you measure is recorded as it is, never as in spec.
        </p>
      </section>
    );
  const onSheet = shownFigures(specification, interval);
  const [first, ...others] = set === undefined ? onSheet : setFigures(set);
  return (
    <section aria-label={label} className="border-l-8 border-act pl-5">
      <div className="flex flex-wrap justify-between gap-x-6">
        <h2 className="text-body font-bold text-quiet">{label}</h2>
        {beside}
      </div>
      {set === undefined ? null : (
        <p className="text-body font-bold text-act">
          Set on the wrench with {set.name}, for {onSheet.map(({ main }) => main).join(' · ')}
        </p>
      )}
      <div className="flex flex-wrap items-baseline gap-x-10">
        <p className="text-figure font-bold whitespace-nowrap" data-value="main">
          {first?.main}
        </p>
        {others.map(({ main }) => (
          <p key={main} className="text-read font-bold whitespace-nowrap" data-value="second">
            {main}
          </p>
        ))}
        <div className="min-w-[18rem] grow basis-0 self-end pb-2">
          <WindowScale interval={interval} reading={reading} />
        </div>
      </div>
      {first === undefined || first.main === first.window ? null : (
        <p className="flex flex-wrap items-baseline gap-x-6 text-read" data-value="window">
          <span className="text-body text-quiet">
            {set === undefined ? 'accepted' : 'accepted on the wrench'}
          </span>
          {[first, ...others].map(({ window }) => (
            <span key={window} className="whitespace-nowrap">
              {window}
            </span>
          ))}
        </p>
      )}
      {set === undefined ? null : <p className="text-note">{set.explain}</p>}
      {proven === undefined ? null : (
        <p className="text-body">
          Must be proven: with this tool aim for{' '}
          <span className="font-bold">{formatWindow(proven, specification.unit)}</span>
        </p>
      )}
    </section>
  );
}
