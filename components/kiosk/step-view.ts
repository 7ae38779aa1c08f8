import { toleranceInterval, type Specification } from '@/lib/fastening';
import { askSpecification, currentEntries, type JobState, type Reading } from '@/lib/job';
import { allWants, openWants, orderedFasteners, wantLabel, type Want } from '@/lib/kiosk';
import type { Verdict } from '@/lib/metrology';
import type { Drawing, FastenerGroup, Pass, Step } from '@/lib/procedure';
import { formatWindow, quantityOf, type Unit } from '@/lib/quantity';
import type { FastenerMarkData, MarkState } from '../step/fastener-mark';
import type { WantedNumber } from './value-pad';

/** One figure of a step, as the screen shows it. */
export interface StepFigure {
  readonly key: string;
  readonly label: string;
  readonly specification: Specification;
  readonly reading?: { readonly canonical: number; readonly verdict: Verdict };
}

const stageNames: Readonly<Record<Pass['stage'], string>> = {
  snug: 'snug pass',
  intermediate: 'intermediate pass',
  final: 'final pass',
};

const groupById = (job: JobState, id: string): FastenerGroup | undefined =>
  job.revision.groups.find((group) => group.id === id);

/** "Cover bolts, M6 8.8, final pass" */
const passLabel = (group: FastenerGroup, pass: Pass): string =>
  `${group.name}, ${group.thread} ${group.strengthClass}${group.passes.length > 1 ? `, ${stageNames[pass.stage]}` : ''}`;

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
    const group = groupById(job, effect.group);
    const pass = group?.passes.find(({ id }) => id === effect.pass);
    if (asked || group === undefined || pass === undefined) return [];
    const key = `${group.id} ${pass.id}`;
    switch (pass.tightening.kind) {
      case 'torque':
        return [{ key, label: passLabel(group, pass), specification: pass.tightening.torque }];
      case 'torqueAngle':
        return [
          { key, label: passLabel(group, pass), specification: pass.tightening.snugTorque },
          { key: `${key} angle`, label: 'then turn by', specification: pass.tightening.angle },
        ];
      case 'byFeel':
        return [
          { key, label: passLabel(group, pass), specification: { kind: 'noFigure', unit: 'N.m' } },
        ];
    }
  });

/** What is measured or set in a step, in the order in which it is wanted. */
export const stepFigures = (job: JobState, step: Step): readonly StepFigure[] => [
  ...silentPasses(job, step),
  ...step.asks.flatMap((ask): readonly StepFigure[] => {
    if (ask.kind !== 'value') return [];
    const { of } = ask;
    const group = of.kind === 'pass' ? groupById(job, of.group) : undefined;
    const pass = of.kind === 'pass' ? group?.passes.find(({ id }) => id === of.pass) : undefined;
    const reading = lastReading(job, step.id, ask.id);
    const angle = of.kind === 'pass' && of.measure === 'angle';
    return [
      {
        key: ask.id,
        label:
          group === undefined || pass === undefined || angle ? ask.label : passLabel(group, pass),
        specification: askSpecification(job.revision, ask),
        ...(reading === undefined
          ? {}
          : { reading: { canonical: reading.canonical, verdict: reading.verdict } }),
      },
    ];
  }),
];

/** The figure that matters now: of the next thing wanted, else the last one of the step. */
export const currentFigure = (job: JobState, step: Step): StepFigure | undefined => {
  const figures = stepFigures(job, step);
  const wanted = openWants(job, step).find(({ ask }) => ask.kind === 'value')?.ask.id;
  return figures.find(({ key }) => key === wanted) ?? figures.at(-1);
};

/** The other figures of the step, as one line each: "Belt play midway 9–13 mm". */
export const otherFigures = (job: JobState, step: Step): readonly string[] => {
  const now = currentFigure(job, step)?.key;
  return stepFigures(job, step)
    .filter(({ key }) => key !== now)
    .map(
      ({ label, specification }) =>
        `${label} ${formatWindow(toleranceInterval(specification), specification.unit)}`,
    );
};

/** The next fastener whose value is wanted: chosen by touch, else the next in the order. */
export const nextFastener = (
  job: JobState,
  step: Step,
  chosen: string | undefined,
): string | undefined => {
  const each = openWants(job, step).filter(({ fastener }) => fastener !== undefined);
  return each.some(({ fastener }) => fastener === chosen) ? chosen : each[0]?.fastener;
};

const markState = (
  job: JobState,
  step: Step,
  fastener: string,
  next: string | undefined,
): MarkState => {
  if (fastener === next) return 'current';
  const reading = currentEntries(job, step.id).readings.findLast(
    (one) => one.fastener === fastener,
  );
  if (reading !== undefined)
    return reading.verdict === 'outOfSpec' || reading.verdict === 'notProvable' ? 'bad' : 'done';
  return allWants(job, step).some((want) => want.fastener === fastener) ? 'waiting' : 'plain';
};

/** Groups whose order is worked through in this step: one value each, or a pass over several fasteners. */
const orderedGroups = (step: Step): readonly string[] =>
  step.effects.flatMap((effect) => (effect.kind === 'tightens' ? [effect.group] : []));

/** The fasteners to mark on the drawing, in tightening order where the step tightens them. */
export const stepMarks = (
  job: JobState,
  step: Step,
  chosen: string | undefined,
): readonly FastenerMarkData[] => {
  const next = nextFastener(job, step, chosen);
  const groups = [...new Set([...step.shows, ...orderedGroups(step)])];
  return groups.flatMap((id) => {
    const group = groupById(job, id);
    if (group === undefined || group.drawing !== step.drawing) return [];
    const ordered = orderedGroups(step).includes(id) && group.fasteners.length > 1;
    return orderedFasteners(job, group).map((fastener, index) => ({
      fastener: fastener.id,
      label: fastener.label,
      noun: group.noun,
      hole: fastener.hole,
      lengthMm: fastener.lengthMm,
      ordinal: ordered ? index + 1 : undefined,
      state: markState(job, step, fastener.id, next),
    }));
  });
};

export const stepDrawing = (job: JobState, step: Step): Drawing | undefined =>
  job.revision.drawings.find(({ id }) => id === step.drawing);

/** "Thread-locker, medium strength: cover bolts", for every consumable that the step applies. */
export const stepApplies = (job: JobState, step: Step): readonly string[] =>
  step.effects.flatMap((effect) => {
    if (effect.kind !== 'applies') return [];
    const item = job.revision.consumables.find(({ id }) => id === effect.consumable);
    if (item === undefined) return [];
    const where = [
      ...effect.groups.map((id) => groupById(job, id)?.name ?? id),
      ...effect.parts.map((id) => job.revision.parts.find((part) => part.id === id)?.name ?? id),
    ];
    const strength = item.kind === 'threadLocker' ? `, ${item.strength} strength` : '';
    return [`${item.name}${strength}${where.length === 0 ? '' : `: ${where.join(', ')}`}`];
  });

const padUnits = (specification: Specification): readonly Unit[] => {
  const other: Unit = specification.unit === 'N.m' ? '[lbf_av].[ft_i]' : 'N.m';
  return quantityOf(specification.unit) === 'torque'
    ? [specification.unit, other]
    : [specification.unit];
};

const takesNumber = ({ ask }: Want): boolean => ask.kind === 'value' || ask.kind === 'count';

/** The number that a press on the value pad stands for, if the step takes one. */
export const wantedNumber = (
  job: JobState,
  step: Step,
  chosen: string | undefined,
): WantedNumber | undefined => {
  const next = nextFastener(job, step, chosen);
  const open = openWants(job, step).filter(takesNumber);
  const want =
    allWants(job, step).find((one) => chosen !== undefined && one.fastener === chosen) ??
    open.find(({ fastener }) => fastener === next) ??
    open[0];
  if (want === undefined) return undefined;
  return {
    want,
    label: wantLabel(job, want),
    units: want.ask.kind === 'value' ? padUnits(askSpecification(job.revision, want.ask)) : [],
  };
};

/** The open step that comes up once this one is done, as the sheet orders them. */
export const previewNext = (
  job: JobState,
  step: Step,
): { readonly number: number; readonly title: string } | undefined => {
  const { steps } = job.revision;
  const settled = (id: string): boolean => id === step.id || job.steps[id]?.status !== 'open';
  const here = steps.indexOf(step);
  const next = [...steps.slice(here + 1), ...steps.slice(0, here)].find(
    ({ id, after }) => !settled(id) && after.every(settled),
  );
  return next === undefined ? undefined : { number: steps.indexOf(next) + 1, title: next.title };
};
