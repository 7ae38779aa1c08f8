import type { Drawing } from '../procedure/drawing';
import type { FastenerGroup, Pass } from '../procedure/revision';
import { roundOrder, tighteningOrder } from './tightening-order';

export interface GroupOrder {
  /** Every fastener id of the group once. */
  readonly order: readonly string[];
  /** The maker's sheet wins; else it is computed from the drawing. */
  readonly from: 'sheet' | 'computed';
  /** Those at the end that neither the sheet nor the drawing placed: a fault of the procedure. */
  readonly unplaced: readonly string[];
}

/** The order in which to tighten a group. */
export const groupOrder = (group: FastenerGroup, drawing: Drawing): GroupOrder =>
  group.sheetOrder === undefined
    ? placed(group, tighteningOrder(holesOf(group, drawing)), 'computed')
    : placed(group, group.sheetOrder, 'sheet');

/** The same fasteners once round the joint, for the check round after the last pass. */
export const groupRound = (group: FastenerGroup, drawing: Drawing): GroupOrder =>
  placed(group, roundOrder(holesOf(group, drawing)), 'computed');

/** One walk over a group: what is asked of each of its fasteners, in which order. */
export interface Round extends GroupOrder {
  readonly pass: Pass;
}

/** All passes of a group as its procedure has them, each with its order. */
export const passPlan = (group: FastenerGroup, drawing: Drawing): readonly Round[] => {
  const order = groupOrder(group, drawing);
  return group.passes.map((pass) => ({ pass, ...order }));
};

const holesOf = (group: FastenerGroup, drawing: Drawing) =>
  group.fasteners.flatMap(({ id, hole: name }) => {
    const hole = drawing.holes.find((other) => other.id === name);
    return hole === undefined ? [] : [{ id, xMm: hole.xMm, yMm: hole.yMm }];
  });

/** Keeps a promise of every fastener once, whatever the procedure says. */
const placed = (
  group: FastenerGroup,
  wanted: readonly string[],
  from: GroupOrder['from'],
): GroupOrder => {
  const own = group.fasteners.map(({ id }) => id);
  const known = [...new Set(wanted)].filter((id) => own.includes(id));
  const unplaced = own.filter((id) => !known.includes(id));
  return { order: [...known, ...unplaced], from, unplaced };
};
