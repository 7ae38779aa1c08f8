'use client';
import type { Step } from '@/lib/procedure';
import { Panel } from '../design/panel';
import { CautionBands } from '../step/caution-band';

/** The cautions of the step, and what stands above them all. */
export function CautionPanel({
  step,
  onClose,
}: {
  readonly step: Step;
  readonly onClose: () => void;
}) {
  return (
    <Panel title="Cautions of this step" onClose={onClose}>
      <div className="flex flex-col gap-5 pr-3">
        {step.cautions.length === 0 ? (
          <p className="text-read">The sheet names none for this step.</p>
        ) : null}
        <CautionBands cautions={step.cautions} />
        <p className="text-glance">
          The maker’s manual, the rules of your country and shop, and what you were trained for come
          before this screen. If they say otherwise, stop and call the foreman.
        </p>
      </div>
    </Panel>
  );
}
