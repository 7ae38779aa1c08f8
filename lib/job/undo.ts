import { groupOf, partOf, type Effect, type Revision } from '../procedure';
import { changeGroups, dueAgain, fittedAs, loosen, type Fitted, type Things } from './effects';
import { giveBackToKit } from './kit';
import { change } from './record';
import type { PartState } from './state';

type Fits = Extract<Effect, { kind: 'fits' }>;
type RunsIn = Extract<Effect, { kind: 'runsIn' }>;

const unfit = (revision: Revision, things: Things, effect: Fits, chosen: Fitted): Things => {
  const never = partOf(revision, effect.part)?.reuse === 'never';
  const parts = change(things.parts, effect.part, (old): PartState =>
    old.where === 'off' ? old : { where: 'off', replacementDue: never },
  );
  // The piece chosen new is out of its bag: the next choice says whether it goes on again.
  const goesOnAgain = fittedAs(effect, chosen) === 'new' && effect.as === 'new' && !never;
  return {
    ...things,
    parts,
    kit: goesOnAgain ? giveBackToKit(things.kit, effect.uses) : things.kit,
  };
};

const unrun = (revision: Revision, things: Things, effect: RunsIn): Things => {
  const spent = effect.groups.some((id) =>
    groupOf(revision, id)?.fasteners.some((fastener) => fastener.singleUse),
  );
  const fasteners = changeGroups(
    revision,
    things.fasteners,
    effect.groups,
    (old, fastener, group) => ({
      stage: 'off',
      ...(old.lies === undefined ? {} : { lies: old.lies }),
      ...dueAgain(group, fastener),
    }),
  );
  return { ...things, fasteners, kit: spent ? things.kit : giveBackToKit(things.kit, effect.uses) };
};

/**
 * What the vehicle is once the step of an effect is open again, read on the safe side: nothing moves towards final.
 * A fitted part is off; a fastener run in is off, one only tightened is loose; where it lies nobody said yet.
 * Thread-locker and single-use replacements are due again, a filled fluid is out. What was taken off, loosened or
 * drained stays as it lies. Pieces of the kit that may be used once only stay used.
 */
export const undoEffect = (
  revision: Revision,
  things: Things,
  effect: Effect,
  chosen: Fitted,
): Things => {
  switch (effect.kind) {
    case 'fits':
      return unfit(revision, things, effect, chosen);
    case 'runsIn':
      return unrun(revision, things, effect);
    case 'tightens':
      return {
        ...things,
        fasteners: changeGroups(revision, things.fasteners, [effect.group], loosen),
      };
    case 'applies':
      return {
        ...things,
        fasteners: changeGroups(revision, things.fasteners, effect.groups, (old, _, group) =>
          group.threadLocker === effect.consumable ? { ...old, threadLockerDue: true } : old,
        ),
      };
    case 'fills':
      return { ...things, fluids: change(things.fluids, effect.fluid, () => ({ state: 'out' })) };
    case 'takesOff':
    case 'loosens':
    case 'drains':
      return things;
  }
};
