import type { JobState } from '../job';
import { lookup } from '../job/record';
import { askOf, passOf, stepOf, type FastenerGroup, type Pass } from '../procedure';
import { groupName } from './parts';
import { askedWords } from './words';

/** Fasteners that were tightened and of which no value was asked. */
export interface UnreadRow {
  readonly what: string;
  readonly how: string;
}

const howOf = ({ tightening }: Pass): string => {
  switch (tightening.kind) {
    case 'byFeel':
      return 'By feel: the sheet gives no figure';
    case 'torque':
      return `To ${askedWords(tightening.torque)} by the sheet, which asks for no reading`;
    case 'torqueAngle':
      return `To ${askedWords(tightening.snugTorque)} and ${askedWords(tightening.angle)} by the sheet, which asks for no reading`;
  }
};

/** The last pass that a finished step took the group to. */
const lastPass = (state: JobState, group: FastenerGroup): Pass | undefined =>
  state.revision.steps
    .filter(({ id }) => lookup(state.steps, id)?.status === 'done')
    .flatMap(({ effects }) =>
      effects.flatMap((effect) =>
        effect.kind === 'tightens' && effect.group === group.id
          ? (passOf(group, effect.pass) ?? [])
          : [],
      ),
    )
    .findLast(({ stage }) => stage === 'final');

const wasRead = (state: JobState, group: FastenerGroup, pass: Pass): boolean =>
  state.readings.some((reading) => {
    const step = stepOf(state.revision, reading.step);
    const ask = step && askOf(step, reading.ask);
    return (
      reading.status === 'counted' &&
      ask?.kind === 'value' &&
      ask.of.kind === 'pass' &&
      ask.of.group === group.id &&
      ask.of.pass === pass.id
    );
  });

/** What is tight by the word of the mechanic alone, in the order of the sheet. */
export const unreadRows = (state: JobState): readonly UnreadRow[] =>
  state.revision.groups.flatMap((group) => {
    const final = group.fasteners.every(({ id }) => lookup(state.fasteners, id)?.stage === 'final');
    const pass = final ? lastPass(state, group) : undefined;
    return pass === undefined || wasRead(state, group, pass)
      ? []
      : [{ what: groupName(group), how: howOf(pass) }];
  });
