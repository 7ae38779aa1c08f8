import type { JobState } from '../job';
import { lookup } from '../job/record';
import { groupOf, partOf } from '../procedure';

/** What was taken from the kit, and from elsewhere. */
export interface KitUsed {
  readonly used: readonly string[];
  readonly leftOver: readonly string[];
  /** Pieces that the kit did not hold. */
  readonly further: readonly string[];
}

/** The pieces of the kit by what became of them, in the order of the sheet. */
export const kitUsed = (state: JobState): KitUsed => {
  const those = (which: 'used' | 'leftOver' | 'extra'): readonly string[] =>
    state.revision.kit.flatMap(({ id, name }) => {
      const count = lookup(state.kit, id)?.[which] ?? 0;
      return count === 0 ? [] : [count === 1 ? name : `${name} (${count})`];
    });
  return { used: those('used'), leftOver: those('leftOver'), further: those('extra') };
};

/** Thread-locker, grease and the like, with where each went: "Thread-locker: Hub bolt, Idler nut". */
export const applied = (state: JobState): readonly string[] => {
  const { revision } = state;
  const done = revision.steps
    .filter(({ id }) => lookup(state.steps, id)?.status === 'done')
    .flatMap(({ effects }) => effects);
  return revision.consumables.flatMap(({ id, name }) => {
    const of = done.flatMap((effect) =>
      effect.kind === 'applies' && effect.consumable === id ? [effect] : [],
    );
    if (of.length === 0) return [];
    const where = of.flatMap(({ groups, parts }) => [
      ...groups.map((group) => groupOf(revision, group)?.name),
      ...parts.map((part) => partOf(revision, part)?.name),
    ]);
    const named = [...new Set(where.filter((one) => one !== undefined))];
    return [named.length === 0 ? name : `${name}: ${named.join(', ')}`];
  });
};
