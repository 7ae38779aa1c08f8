import { nominal, toleranceInterval, type Specification } from '@/lib/fastening';
import {
  askedValue,
  currentEntries,
  type AskedValue,
  type JobState,
  type Reading,
} from '@/lib/job';
import { coolantMixes, openWants } from '@/lib/kiosk';
import type { Verdict } from '@/lib/metrology';
import { groupOf, type FastenerGroup, type Pass, type Step } from '@/lib/procedure';
import { formatWindow, quantityOf } from '@/lib/quantity';

/** One figure of a step, as the screen shows it. */
export interface StepFigure {
  readonly key: string;
  readonly label: string;
  readonly specification: Specification;
  /** The fasteners that are tightened, where it is of a pass. */
  readonly group?: FastenerGroup;
  readonly reading?: { readonly canonical: number; readonly verdict: Verdict };
}

const stageNames: Readonly<Record<Pass['stage'], string>> = {
  snug: 'snug pass',
  intermediate: 'intermediate pass',
  final: 'final pass',
};

/** "Cover bolts, M6 8.8, final pass" */
const passLabel = (group: FastenerGroup, pass: Pass): string =>
  `${group.name}, ${group.thread} ${group.strengthClass}${group.passes.length > 1 ? `, ${stageNames[pass.stage]}` : ''}`;

/** Self-locking nuts: what comes on top of the sheet's torque, for the fastener that is next. */
const nutNote = ({ prevailing }: AskedValue): string =>
  prevailing === undefined ? '' : `. ${prevailing.explain}`;

const lastReading = (job: JobState, step: string, ask: string): Reading | undefined =>
  currentEntries(job, step).readings.findLast((reading) => reading.ask === ask);

/** Figures of a pass that the step tightens to without asking for a reading. */
const silentPasses = (job: JobState, step: Step): readonly StepFigure[] =>
  step.effects.flatMap((effect): readonly StepFigure[] => {
    if (effect.kind !== 'tightens') return [];
    const asked = step.asks.some(
      (ask) =>
        ask.kind === 'value' &&
        ask.of.kind === 'pass' &&
        ask.of.group === effect.group &&
        ask.of.pass === effect.pass,
    );
    const group = groupOf(job.revision, effect.group);
    const pass = group?.passes.find(({ id }) => id === effect.pass);
    if (asked || group === undefined || pass === undefined) return [];
    const key = `${group.id} ${pass.id}`;
    switch (pass.tightening.kind) {
      case 'torque':
        return [
          { key, label: passLabel(group, pass), specification: pass.tightening.torque, group },
        ];
      case 'torqueAngle':
        return [
          { key, label: passLabel(group, pass), specification: pass.tightening.snugTorque, group },
          { key: `${key} angle`, label: 'then turn by', specification: pass.tightening.angle },
        ];
      case 'byFeel':
        return [
          {
            key,
            label: passLabel(group, pass),
            specification: { kind: 'noFigure', unit: 'N.m' },
            group,
          },
        ];
    }
  });

/** What is measured or set in a step, in the order in which it is wanted. */
export const stepFigures = (job: JobState, step: Step): readonly StepFigure[] => [
  ...silentPasses(job, step),
  ...step.asks.flatMap((ask): readonly StepFigure[] => {
    if (ask.kind !== 'value') return [];
    const { of } = ask;
    const group = of.kind === 'pass' ? groupOf(job.revision, of.group) : undefined;
    const pass = of.kind === 'pass' ? group?.passes.find(({ id }) => id === of.pass) : undefined;
    const reading = lastReading(job, step.id, ask.id);
    const torque = of.kind === 'pass' && of.measure === 'torque';
    const next = openWants(job, step).find((want) => want.ask.id === ask.id)?.fastener;
    const asked = askedValue(job, ask, next ?? reading?.fastener);
    return [
      {
        key: ask.id,
        label:
          group === undefined || pass === undefined || !torque
            ? ask.label
            : `${passLabel(group, pass)}${nutNote(asked)}`,
        specification: asked.specification,
        ...(group === undefined || !torque ? {} : { group }),
        ...(reading === undefined
          ? {}
          : { reading: { canonical: reading.canonical, verdict: reading.verdict } }),
      },
    ];
  }),
];

/** The figure that matters now: of the next thing wanted, else the last one measured. */
export const currentFigure = (job: JobState, step: Step): StepFigure | undefined => {
  const figures = stepFigures(job, step);
  const wanted = openWants(job, step).find(({ ask }) => ask.kind === 'value')?.ask.id;
  const found = figures.find(({ key }) => key === wanted);
  return found ?? figures.findLast(({ reading }) => reading !== undefined) ?? figures[0];
};

/** The torque that a wrench is set to in this step: the one that matters now, else the first. */
export const torqueFigure = (job: JobState, step: Step): StepFigure | undefined => {
  const now = currentFigure(job, step);
  return [...(now === undefined ? [] : [now]), ...stepFigures(job, step)].find(
    ({ specification }) =>
      quantityOf(specification.unit) === 'torque' && nominal(specification) !== undefined,
  );
};

/** The other figures of the step, as one line each: "Belt play midway 9–13 mm"; and what to mix for a coolant. */
export const otherFigures = (job: JobState, step: Step): readonly string[] => {
  const now = currentFigure(job, step)?.key;
  return [
    ...stepFigures(job, step)
      .filter(({ key }) => key !== now)
      .map(
        ({ label, specification }) =>
          `${label} ${formatWindow(toleranceInterval(specification), specification.unit)}`,
      ),
    ...coolantMixes(job, step).map(({ text }) => text),
  ];
};
