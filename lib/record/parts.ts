import type { JobState } from '../job';
import { lookup } from '../job/record';
import { withUnit } from '../ledger/words';
import { comesWithKit, type FastenerGroup } from '../procedure';

/** What became of parts and fasteners, each as one line. */
export interface PartsUsed {
  /** Was not there before. */
  readonly fitted: readonly string[];
  /** A new one in the place of the old. */
  readonly replaced: readonly string[];
  /** The same one again. */
  readonly reused: readonly string[];
}

/** "Cover bolts (9)" */
export const groupName = ({ name, fasteners }: FastenerGroup): string =>
  fasteners.length === 1 ? name : `${name} (${fasteners.length})`;

/** The groups that a finished step ran in, with new or with the same fasteners. */
const groupsRunIn = (state: JobState, which: 'same' | 'new'): readonly FastenerGroup[] => {
  const ids = new Set(
    state.revision.steps
      .filter(({ id }) => lookup(state.steps, id)?.status === 'done')
      .flatMap(({ effects }) =>
        effects.flatMap((effect) =>
          effect.kind === 'runsIn' && effect.fasteners === which ? effect.groups : [],
        ),
      ),
  );
  return state.revision.groups.filter(({ id }) => ids.has(id));
};

/** What was fitted, replaced and used again, in the order of the sheet; only what is on the vehicle now. */
export const partsUsed = (state: JobState): PartsUsed => {
  const { revision } = state;
  const parts = (starts: 'on' | 'off', fitted: 'new' | 'reused'): readonly string[] =>
    revision.parts
      .filter((part) => {
        const now = lookup(state.parts, part.id);
        return part.starts === starts && now?.where === 'on' && now.fitted === fitted;
      })
      .map(({ name }) => name);
  const fresh = groupsRunIn(state, 'new');
  const ofKit = (group: FastenerGroup): boolean => comesWithKit(revision, group.id);
  return {
    fitted: [
      ...parts('off', 'new'),
      ...parts('off', 'reused'),
      ...fresh.filter(ofKit).map(groupName),
    ],
    replaced: [...parts('on', 'new'), ...fresh.filter((group) => !ofKit(group)).map(groupName)],
    reused: [...parts('on', 'reused'), ...groupsRunIn(state, 'same').map(groupName)],
  };
};

/** The volumes of one fluid in words; absent where none was read. */
export interface FluidUsed {
  readonly name: string;
  readonly drained?: string;
  readonly spilled?: string;
  readonly returned?: string;
  readonly filled?: string;
}

/** The fluids of which a volume was read. */
export const fluidsUsed = (state: JobState): readonly FluidUsed[] =>
  state.revision.fluids.flatMap(({ id, name }) => {
    const { drainedL, spilledL, returnedL, filledL } = lookup(state.fluids, id) ?? {};
    const volumes = { drained: drainedL, spilled: spilledL, returned: returnedL, filled: filledL };
    const read = Object.entries(volumes).flatMap(([use, litres]) =>
      litres === undefined ? [] : [[use, withUnit(litres, 'L')] as const],
    );
    return read.length === 0 ? [] : [{ name, ...Object.fromEntries(read) }];
  });
