import type { Deviation, JobState } from '../job';
import { looseEnds } from '../ledger';
import { kindWords } from '../ledger/step-ends';
import { reasonWords, readWords } from '../ledger/words';
import { fastenerName, fastenerOf, partOf, stepOf, type Caution } from '../procedure';
import { type Names } from './words';

/** What was not as the maker's sheet has it, why, and who said what to it. */
export interface DeviationRow {
  readonly what: string;
  readonly why: string;
  readonly decision: string;
}

const decisionWords = {
  accepted: 'Accepted',
  acceptedRecheckDue: 'Accepted, to be checked again after first use',
  rework: 'Sent back and done again',
};

const concerns = (state: JobState, deviation: Deviation): string => {
  const fastener = deviation.fastener && fastenerOf(state.revision, deviation.fastener);
  if (fastener) return fastenerName(fastener.group, fastener.fastener);
  const part = deviation.part && partOf(state.revision, deviation.part)?.name;
  return part || (stepOf(state.revision, deviation.step)?.title ?? 'A step of the sheet');
};

const whatOf = (state: JobState, deviation: Deviation): string => {
  const reading = state.readings.find(({ id }) => id === deviation.reading);
  const read = reading === undefined ? '' : `, ${readWords(reading)}`;
  return `${kindWords(deviation.kind)}: ${concerns(state, deviation)}${read}`;
};

export const deviationRows = (state: JobState, names: Names): readonly DeviationRow[] =>
  state.deviations.map((deviation) => {
    const { decision } = deviation;
    return {
      what: whatOf(state, deviation),
      why: reasonWords(deviation.reason) ?? 'No reason given',
      decision:
        decision === undefined
          ? 'Not decided yet'
          : `${decisionWords[decision.word]} by ${names.person(decision.by)}: ${reasonWords(decision.reason) ?? ''}`,
    };
  });

export interface SignedRow {
  readonly what: string;
  readonly why: string;
  readonly by: string;
}

/** What is still open on the vehicle and was signed for. */
export const signedRows = (state: JobState, names: Names): readonly SignedRow[] =>
  looseEnds(state).flatMap(({ key, text, signedBy }) => {
    if (signedBy === undefined) return [];
    const signature = state.signatures.find(({ looseEnd }) => looseEnd === key);
    return [{ what: text, why: reasonWords(signature?.reason) ?? '', by: names.person(signedBy) }];
  });

/** What must be looked at again after first use. */
export const dueLines = (state: JobState): readonly string[] =>
  state.deviations
    .filter(({ decision }) => decision?.word === 'acceptedRecheckDue')
    .map((deviation) => `Check again after first use: ${concerns(state, deviation)}`)
    .filter((line, at, all) => all.indexOf(line) === at);

/** The cautions of the steps that something was decided or signed about, each once. */
export const cautionsFor = (state: JobState): readonly Caution[] => {
  const steps = new Set([
    ...state.deviations.map(({ step }) => step),
    ...looseEnds(state).flatMap(({ step }) => step ?? []),
  ]);
  const all = state.revision.steps.filter(({ id }) => steps.has(id)).flatMap((s) => s.cautions);
  const same = (a: Caution, b: Caution): boolean =>
    a.hazard === b.hazard && a.avoidance === b.avoidance;
  return all.filter((caution, at) => all.findIndex((other) => same(caution, other)) === at);
};
