import { unreachable } from '../result';
import {
  groupOf,
  partOf,
  passOf,
  type Effect,
  type Fastener,
  type FastenerGroup,
  type Revision,
} from '../procedure';
import { takeFromKit } from './kit';
import { change } from './record';
import type { FastenerState, JobState, PartState } from './state';

/** What effects act on. */
export type Things = Pick<JobState, 'parts' | 'fasteners' | 'fluids' | 'kit'>;

type How = (old: FastenerState, fastener: Fastener, group: FastenerGroup) => FastenerState;

/** Changes every fastener of the groups. */
export const changeGroups = (
  revision: Revision,
  fasteners: Things['fasteners'],
  groups: readonly string[],
  how: How,
): Things['fasteners'] =>
  groups.reduce((now, id) => {
    const group = groupOf(revision, id);
    if (group === undefined) return now;
    return group.fasteners.reduce(
      (next, fastener) => change(next, fastener.id, (old) => how(old, fastener, group)),
      now,
    );
  }, fasteners);

/** What is due once a joint was opened: thread-locker where the group has it, a new one where it is single-use. */
export const dueAgain = (group: FastenerGroup, fastener: Fastener) => ({
  threadLockerDue: group.threadLocker !== undefined,
  replacementDue: fastener.singleUse,
});

const takeOff =
  (tray: string | undefined): How =>
  (_, fastener, group) => ({
    stage: 'off',
    ...(tray === undefined ? {} : { lies: { tray, place: fastener.label } }),
    ...dueAgain(group, fastener),
  });

/** Loose, or off where it was off; a joint that is opened wants its thread-locker and single-use parts again. */
export const loosen: How = (old, fastener, group) => ({
  ...old,
  stage: old.stage === 'off' ? 'off' : 'loose',
  ...dueAgain(group, fastener),
});

const runIn =
  (fasteners: 'same' | 'new'): How =>
  ({ threadLockerDue, replacementDue }) => ({
    stage: 'runIn',
    threadLockerDue,
    replacementDue: fasteners === 'same' && replacementDue,
  });

// A fastener that is off cannot be tightened; whoever says so is shown it as off.
const tighten =
  (passId: string): How =>
  (old, _, group) => {
    const stage = passOf(group, passId)?.stage;
    return old.stage === 'off' || stage === undefined ? old : { ...old, stage };
  };

const lock =
  (consumable: string): How =>
  (old, _, group) =>
    group.threadLocker === consumable ? { ...old, threadLockerDue: false } : old;

const partOff = (revision: Revision, id: string, tray: string | undefined): PartState => ({
  where: 'off',
  ...(tray === undefined ? {} : { tray }),
  replacementDue: partOf(revision, id)?.reuse === 'never',
});

/** How the parts of a step are fitted: as its effects say, or as was chosen for the part. */
export type Fitted = (part: string) => 'new' | 'reused';

/** Whether a `fits` puts a new part on, or the same one again. */
export const fittedAs = (effect: Extract<Effect, { kind: 'fits' }>, chosen: Fitted) =>
  effect.as === 'asChosen' ? chosen(effect.part) : effect.as;

/** What the vehicle, the trays and the kit are after one effect of a step. Total: any state, any order. */
export const applyEffect = (
  revision: Revision,
  things: Things,
  effect: Effect,
  chosen: Fitted,
): Things => {
  const fasteners = (groups: readonly string[], how: How): Things => ({
    ...things,
    fasteners: changeGroups(revision, things.fasteners, groups, how),
  });
  switch (effect.kind) {
    case 'drains':
      return { ...things, fluids: change(things.fluids, effect.fluid, () => ({ state: 'out' })) };
    case 'fills':
      return {
        ...things,
        fluids: change(things.fluids, effect.fluid, () => ({ state: 'refilled' })),
      };
    case 'takesOff': {
      const parts = effect.parts.reduce(
        (now, id) => change(now, id, () => partOff(revision, id, effect.tray)),
        things.parts,
      );
      return { ...fasteners(effect.groups, takeOff(effect.tray)), parts };
    }
    case 'fits': {
      const fitted = fittedAs(effect, chosen);
      const parts = change(things.parts, effect.part, (old): PartState => ({
        where: 'on',
        fitted,
        replacementDue: fitted === 'reused' && old.replacementDue,
      }));
      const kit = fitted === 'new' ? takeFromKit(revision, things.kit, effect.uses) : things.kit;
      return { ...things, parts, kit };
    }
    case 'loosens':
      return fasteners(effect.groups, loosen);
    case 'runsIn':
      return {
        ...fasteners(effect.groups, runIn(effect.fasteners)),
        kit: takeFromKit(revision, things.kit, effect.uses),
      };
    case 'tightens':
      return fasteners([effect.group], tighten(effect.pass));
    case 'applies':
      return fasteners(effect.groups, lock(effect.consumable));
    default:
      return unreachable(effect);
  }
};
