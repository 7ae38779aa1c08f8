import type { FastenerGroup } from '../procedure/revision';
import { checkPasses, checkTightening } from './check-tightening';
import { doubtful, type Fault } from './fault';
import { plausibility } from './plausibility';
import type { Specification } from './specification';

export interface GroupFault extends Fault {
  /** Absent: it concerns the group as a whole. */
  readonly pass?: string;
}

/**
 * Everything that can be doubted about what a group is tightened to, for the writer of a procedure. Whether its
 * passes, holes and steps fit together is for the check of the whole revision.
 */
export const checkGroupTightening = (group: FastenerGroup): readonly GroupFault[] => [
  ...checkPasses(group),
  ...group.passes.flatMap(({ id, tightening, stage }) => {
    const inItself = checkTightening(tightening);
    if (tightening.kind === 'byFeel' || inItself.length > 0) {
      return inItself.map((fault) => ({ ...fault, pass: id }));
    }
    const torque = tightening.kind === 'torque' ? tightening.torque : tightening.snugTorque;
    // What comes before more, be it torque or angle, may be as low as it likes.
    const finished = stage === 'final' && tightening.kind === 'torque';
    return againstThread(torque, group, finished).map((fault) => ({ ...fault, pass: id }));
  }),
];

const againstThread = (
  torque: Specification,
  { thread, strengthClass, noun }: FastenerGroup,
  finished: boolean,
): readonly Fault[] => {
  const judged = plausibility(torque, thread, strengthClass);
  if (!judged.ok) {
    switch (judged.error.code) {
      case 'notAThread':
      case 'pitchMissing':
      case 'seriesContradicts':
        return [doubtful('unknownThread', judged.error.message)];
      case 'unknownStrength':
      case 'tooLargeForClass':
        return [doubtful('unknownStrength', judged.error.message)];
      case 'outOfDomain':
        return [doubtful('unknownThread', judged.error.message)];
      case 'noFigure':
      case 'wrongQuantity':
        return [];
    }
  }
  const { kind, message } = judged.value;
  // A plug only seals: its torque has nothing to do with the strength of its thread.
  if (kind === 'tooHigh') return [doubtful('tooHighForThread', message)];
  return kind === 'tooLow' && finished && noun !== 'plug'
    ? [doubtful('tooLowForThread', message)]
    : [];
};
