import { kitItemOf, type Revision } from '../procedure';
import { change } from './record';
import type { JobState, KitState } from './state';

type Uses = readonly { readonly kitItem: string; readonly quantity: number }[];
type Kit = JobState['kit'];

const take = (kit: KitState, wanted: number, quantity: number): KitState => {
  const used = Math.min(kit.used + wanted, quantity);
  return {
    used,
    // What was declared left over and is used after all is not left over.
    leftOver: Math.min(kit.leftOver, quantity - used),
    extra: kit.extra + (kit.used + wanted - used),
  };
};

const giveBack = (kit: KitState, count: number): KitState => {
  const fromExtra = Math.min(kit.extra, count);
  return { ...kit, extra: kit.extra - fromExtra, used: Math.max(0, kit.used - count + fromExtra) };
};

/** Takes pieces from the kit; what it does not hold any more comes from elsewhere and is counted as extra. */
export const takeFromKit = (revision: Revision, kit: Kit, uses: Uses): Kit =>
  uses.reduce((now, { kitItem, quantity }) => {
    const holds = kitItemOf(revision, kitItem)?.quantity ?? 0;
    return change(now, kitItem, (item) => take(item, quantity, holds));
  }, kit);

/** Pieces that came off again and may be fitted again. */
export const giveBackToKit = (kit: Kit, uses: Uses): Kit =>
  uses.reduce(
    (now, { kitItem, quantity }) => change(now, kitItem, (item) => giveBack(item, quantity)),
    kit,
  );
