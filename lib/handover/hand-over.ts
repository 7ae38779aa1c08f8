import type { FastenerStage, JobState, Reading } from '../job';
import { lookup } from '../job/record';
import { reasonWords, trayName, withUnit } from '../ledger/words';
import {
  askOf,
  fastenerName,
  fastenerOf,
  stepNumber,
  stepOf,
  type FastenerGroup,
} from '../procedure';

/** What whoever takes over a job must know first. Each line is one short sentence or list, grouped so that it stays short. */
export interface HandOver {
  /** Where it stands. */
  readonly where: string;
  /** Why it stood still. */
  readonly hold: string | undefined;
  /** What is out, off or loose on the vehicle right now. */
  readonly loose: readonly string[];
  readonly trays: readonly { readonly tray: string; readonly holds: readonly string[] }[];
  /** The last value that stands. */
  readonly lastHeard: string | undefined;
  /** What must be done before the vehicle is started or moved. */
  readonly before: readonly string[];
}

/** Where a fastener stands between as it came and tight. */
export const stageWords: Readonly<Record<Exclude<FastenerStage, 'untouched' | 'final'>, string>> = {
  off: 'off',
  loose: 'loose',
  runIn: 'run in by hand',
  snug: 'snug, not final',
  intermediate: 'at an intermediate pass, not final',
};

const stages = ['off', 'loose', 'runIn', 'snug', 'intermediate'] as const;

/** "3 of 9 off", or "off" where it is all of them. */
const groupLine = (state: JobState, group: FastenerGroup): readonly string[] => {
  const counts = stages.flatMap((stage) => {
    const count = group.fasteners.filter(
      ({ id }) => lookup(state.fasteners, id)?.stage === stage,
    ).length;
    if (count === 0) return [];
    const many = group.fasteners.length;
    return [count === many ? stageWords[stage] : `${count} of ${many} ${stageWords[stage]}`];
  });
  return counts.length === 0 ? [] : [`${group.name}: ${counts.join(', ')}`];
};

const fluidsOut = (state: JobState): readonly string[] =>
  state.revision.fluids
    .filter(({ id }) => lookup(state.fluids, id)?.state === 'out')
    .map(({ name }) => name);

const partsOff = (state: JobState): readonly string[] =>
  state.revision.parts
    .filter(({ id }) => lookup(state.parts, id)?.where === 'off')
    .map(({ name }) => name);

const opened = (state: JobState): readonly FastenerGroup[] =>
  state.revision.groups.filter((group) =>
    group.fasteners.some(({ id }) => {
      const stage = lookup(state.fasteners, id)?.stage;
      return stage !== undefined && stage !== 'untouched' && stage !== 'final';
    }),
  );

const looseLines = (state: JobState): readonly string[] => {
  const off = partsOff(state);
  return [
    ...fluidsOut(state).map((name) => `${name} is out`),
    ...(off.length === 0 ? [] : [`Off: ${off.join(', ')}`]),
    ...state.revision.groups.flatMap((group) => groupLine(state, group)),
  ];
};

const inTrays = (state: JobState): HandOver['trays'] => {
  const trays = new Map<string, string[]>();
  const lay = (tray: string, what: string): void => {
    const name = trayName(tray);
    trays.set(name, [...(trays.get(name) ?? []), what]);
  };
  for (const part of state.revision.parts) {
    const now = lookup(state.parts, part.id);
    if (now?.where === 'off' && now.tray !== undefined) lay(now.tray, part.name);
  }
  for (const group of state.revision.groups) {
    const lying = group.fasteners.flatMap(({ id }) => lookup(state.fasteners, id)?.lies ?? []);
    for (const tray of new Set(lying.map((one) => one.tray))) {
      const places = lying.filter((one) => one.tray === tray).map(({ place }) => place);
      lay(
        tray,
        group.fasteners.length === 1 ? group.name : `${group.name} in places ${places.join(', ')}`,
      );
    }
  }
  return [...trays]
    .sort(([a], [b]) => a.localeCompare(b, 'en'))
    .map(([tray, holds]) => ({ tray, holds }));
};

/** What a reading is of: the fastener, else what was asked for. */
export const subjectOf = ({ revision }: JobState, { step, ask, fastener }: Reading): string => {
  const one = fastener === undefined ? undefined : fastenerOf(revision, fastener);
  if (one !== undefined) return fastenerName(one.group, one.fastener);
  const found = stepOf(revision, step);
  return (found && askOf(found, ask)?.label) ?? '';
};

const lastHeard = (state: JobState): string | undefined => {
  const last = state.readings.findLast(
    ({ status }) => status === 'provisional' || status === 'counted',
  );
  if (last === undefined) return undefined;
  const value = `${subjectOf(state, last)}: ${withUnit(last.value, last.unit)}`;
  return last.input.by === 'voice' ? `“${last.input.said}” – ${value}` : value;
};

const beforeMoving = (state: JobState): readonly string[] => {
  const off = partsOff(state).length;
  const groups = opened(state);
  return [
    ...fluidsOut(state).map((name) => `Fill: ${name}`),
    ...(off === 0
      ? []
      : [`Fit ${off === 1 ? 'the part that is' : `the ${off} parts that are`} off`]),
    ...(groups.length === 0
      ? []
      : [`Tighten to the final pass: ${groups.map(({ name }) => name).join(', ')}`]),
  ];
};

const where = (state: JobState): string => {
  const { revision, currentStep, steps } = state;
  const settled = Object.values(steps).filter(({ status }) => status !== 'open').length;
  const title = stepOf(revision, currentStep)?.title ?? '';
  return `Step ${stepNumber(revision, currentStep)} of ${revision.steps.length}, ${title}. ${settled} settled.`;
};

/** The summary of a job as it stands. A hold that was just lifted is told by `hold`. */
export const handOver = (state: JobState, hold: JobState['hold'] = state.hold): HandOver => ({
  where: where(state),
  hold: hold === undefined ? undefined : reasonWords(hold.reason),
  loose: looseLines(state),
  trays: inTrays(state),
  lastHeard: lastHeard(state),
  before: beforeMoving(state),
});
