import { stageWords } from '../handover';
import type { FastenerStage, JobState } from '../job';
import { lookup } from '../job/record';
import { looseEnds } from '../ledger';
import { deviationWords } from '../ledger/step-ends';
import { trayName } from '../ledger/words';
import { stepNumber } from '../procedure';
import type { Kind } from './kind';

/** One thing that is otherwise after an event, in plain words. */
export interface Change {
  readonly kind: Kind;
  readonly text: string;
}

const allStages: Readonly<Record<FastenerStage, string>> = {
  ...stageWords,
  untouched: 'as they came',
  final: 'tight to the final pass',
};

const parts = (before: JobState, after: JobState): readonly string[] =>
  after.revision.parts.flatMap(({ id, name }) => {
    const now = lookup(after.parts, id);
    if (now === undefined || now.where === lookup(before.parts, id)?.where) return [];
    if (now.where === 'off')
      return [`${name} off${now.tray === undefined ? '' : `, in ${trayName(now.tray)}`}`];
    return [
      `${name} on${now.fitted === undefined ? '' : now.fitted === 'new' ? ', new' : ', the same again'}`,
    ];
  });

const fasteners = (before: JobState, after: JobState): readonly string[] =>
  after.revision.groups.flatMap((group) => {
    const changed = group.fasteners.filter(
      ({ id }) => lookup(before.fasteners, id)?.stage !== lookup(after.fasteners, id)?.stage,
    );
    const stages = new Set(changed.flatMap(({ id }) => lookup(after.fasteners, id)?.stage ?? []));
    return [...stages].map((stage) => `${group.name}: ${allStages[stage]}`);
  });

const fluidWords = { in: 'in', out: 'out', refilled: 'filled' } as const;

const fluids = (before: JobState, after: JobState): readonly string[] =>
  after.revision.fluids.flatMap(({ id, name }) => {
    const now = lookup(after.fluids, id)?.state;
    return now === undefined || now === lookup(before.fluids, id)?.state
      ? []
      : [`${name}: ${fluidWords[now]}`];
  });

/** Deviations that follow from what was entered, as their step is done. */
const arisen = (before: JobState, after: JobState): readonly string[] =>
  after.deviations
    .slice(before.deviations.length)
    .filter(({ reading, id }) => reading !== undefined || id.startsWith('reusedAgainstSheet:'))
    .map((deviation) => `To be decided: ${deviationWords(after, deviation)}`);

const reopened = (
  before: JobState,
  after: JobState,
  named: string | undefined,
): readonly string[] => {
  const numbers = after.revision.steps
    .filter(
      ({ id }) =>
        id !== named &&
        lookup(after.steps, id)?.status === 'open' &&
        lookup(before.steps, id)?.status !== 'open',
    )
    .map(({ id }) => stepNumber(after.revision, id));
  return numbers.length === 0 ? [] : [`Open again with it: step ${numbers.join(', ')}`];
};

/** Signatures that no longer stand, since what was signed for has changed. */
const lapsed = (before: JobState, after: JobState): readonly string[] => {
  const gone = before.signatures.filter(
    ({ looseEnd, mark }) =>
      !after.signatures.some((one) => one.looseEnd === looseEnd && one.mark === mark),
  );
  if (gone.length === 0) return [];
  const ends = looseEnds(before);
  return gone.map(
    ({ looseEnd }) =>
      `A signature stands no longer: ${ends.find(({ key }) => key === looseEnd)?.text ?? 'settled'}`,
  );
};

/** What an event changed on the vehicle and in the record, beyond what it says itself. `step`: the one it names. */
export const changesOf = (
  before: JobState,
  after: JobState,
  step: string | undefined,
): readonly Change[] => {
  const as = (kind: Kind, texts: readonly string[]): readonly Change[] =>
    texts.map((text) => ({ kind, text }));
  return [
    ...(before.fluids === after.fluids ? [] : as('fluids', fluids(before, after))),
    ...(before.parts === after.parts ? [] : as('parts', parts(before, after))),
    ...(before.fasteners === after.fasteners ? [] : as('parts', fasteners(before, after))),
    ...(before.steps === after.steps ? [] : as('steps', reopened(before, after, step))),
    ...(before.deviations === after.deviations ? [] : as('deviations', arisen(before, after))),
    ...(before.signatures === after.signatures ? [] : as('signatures', lapsed(before, after))),
  ];
};
