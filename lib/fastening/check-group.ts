import type { FastenerGroup } from '../procedure/revision';
import { checkPasses, checkTightening } from './check-tightening';
import { doubtful, wrong, type Fault } from './fault';
import { plausibility } from './plausibility';
import type { Specification } from './specification';

export interface GroupFault extends Fault {
  /** Absent: it concerns the group as a whole. */
  readonly pass?: string;
}

/** Everything that can be doubted about how a group is to be tightened, for the writer of a procedure. */
export const checkGroup = (group: FastenerGroup): readonly GroupFault[] => [
  ...checkPasses(group),
  ...unlisted(group),
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

const unlisted = ({ sheetOrder, fasteners }: FastenerGroup): readonly Fault[] => {
  if (sheetOrder === undefined) return [];
  const missing = fasteners.filter(({ id }) => !sheetOrder.includes(id));
  const own = sheetOrder.filter((id) => fasteners.some((fastener) => fastener.id === id));
  return missing.length === 0 &&
    new Set(sheetOrder).size === sheetOrder.length &&
    own.length === sheetOrder.length
    ? []
    : [wrong('unlisted', 'The sheet’s order must name every fastener of the group once.')];
};

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
