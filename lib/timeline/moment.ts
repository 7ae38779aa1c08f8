import { handOver, subjectOf } from '../handover';
import type { JobState } from '../job';
import { lookup } from '../job/record';
import { looseEnds } from '../ledger';
import { readWords, withUnit } from '../ledger/words';
import type { Verdict } from '../metrology/verdict';

/** How a job stood at one moment, in plain words. */
export interface Moment {
  readonly seq: number;
  readonly phase: JobState['phase'];
  readonly where: string;
  readonly hold?: string;
  readonly bay: string;
  /** What is out, off or loose on the vehicle, a line a thing. */
  readonly loose: readonly string[];
  readonly partsOff: readonly string[];
  readonly trays: readonly { readonly tray: string; readonly holds: readonly string[] }[];
  readonly fluids: readonly { readonly name: string; readonly stands: string }[];
  readonly last?: { readonly what: string; readonly read: string; readonly verdict: Verdict };
  /** The ledger, without the steps that are still to come. */
  readonly ends: readonly {
    readonly key: string;
    readonly text: string;
    readonly signedBy?: string;
  }[];
  readonly stepsOpen: number;
}

/** Whose names stand for ids. */
export interface MomentNames {
  readonly person: (id: string) => string;
  readonly bay: (id: string) => string;
}

const fluidWords = { in: 'in', out: 'out', refilled: 'filled again' } as const;

const fluids = (state: JobState): Moment['fluids'] =>
  state.revision.fluids.flatMap(({ id, name }) => {
    const now = lookup(state.fluids, id);
    if (now === undefined) return [];
    const volumes = [
      ['drained', now.drainedL],
      ['spilled', now.spilledL],
      ['poured back', now.returnedL],
      ['filled', now.filledL],
    ] as const;
    const read = volumes.flatMap(([use, litres]) =>
      litres === undefined ? [] : [`${withUnit(litres, 'L')} ${use}`],
    );
    return [{ name, stands: [fluidWords[now.state], ...read].join(', ') }];
  });

const lastReading = (state: JobState): Moment['last'] => {
  const last = state.readings.findLast(
    ({ status }) => status === 'provisional' || status === 'counted',
  );
  return last && { what: subjectOf(state, last), read: readWords(last), verdict: last.verdict };
};

/** A state in words. */
export const momentOf = (state: JobState, names: MomentNames): Moment => {
  const { where, hold, loose, trays } = handOver(state);
  const last = lastReading(state);
  const all = looseEnds(state);
  const ends = all.filter(({ kind }) => kind !== 'stepOpen');
  return {
    seq: state.seq,
    phase: state.phase,
    where,
    ...(hold === undefined ? {} : { hold }),
    bay: names.bay(state.bay),
    loose,
    partsOff: state.revision.parts
      .filter(({ id }) => lookup(state.parts, id)?.where === 'off')
      .map(({ name }) => name),
    trays,
    fluids: fluids(state),
    ...(last === undefined ? {} : { last }),
    ends: ends.map(({ key, text, signedBy }) => ({
      key,
      text,
      ...(signedBy === undefined ? {} : { signedBy: names.person(signedBy) }),
    })),
    stepsOpen: all.length - ends.length,
  };
};
