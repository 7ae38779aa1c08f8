import { fault, type Fault } from './fault';
import { dependents } from './lookup';
import type { FastenerGroup, Pass, Revision } from './revision';

const stages: readonly Pass['stage'][] = ['snug', 'intermediate', 'final'];

const passOrder = (group: FastenerGroup): readonly Fault[] => {
  const where = `groups/${group.id}`;
  const ranks = group.passes.map((pass) => stages.indexOf(pass.stage));
  const finals = group.passes.filter((pass) => pass.stage === 'final').length;
  if (finals !== 1)
    return [fault(where, `“${group.name}” needs exactly one final pass; it has ${finals}.`)];
  return ranks.every((rank, at) => at === 0 || rank >= (ranks[at - 1] ?? 0))
    ? []
    : [fault(where, `“${group.name}”: order its passes snug, intermediate, final.`)];
};

/** Where a pass is tightened: the step, and its place among what that step does. */
const tightenedAt = (
  revision: Revision,
  group: FastenerGroup,
  pass: Pass,
): readonly { readonly step: string; readonly at: number }[] =>
  revision.steps.flatMap((step) =>
    step.effects.flatMap((effect, at) =>
      effect.kind === 'tightens' && effect.group === group.id && effect.pass === pass.id
        ? [{ step: step.id, at }]
        : [],
    ),
  );

/** No pass is skipped, and each follows from the one before. */
const inTurn = (revision: Revision, group: FastenerGroup): readonly Fault[] => {
  const where = `groups/${group.id}`;
  const done = group.passes.map((pass) => ({ pass, at: tightenedAt(revision, group, pass) }));
  if (done.every(({ at }) => at.length === 0)) return [];
  return done.flatMap(({ pass, at }, place) => {
    if (at.length === 0)
      return pass.stage === 'final'
        ? []
        : [fault(where, `“${group.name}”: no step tightens its pass “${pass.id}”.`)];
    const before = done[place - 1];
    if (before === undefined || before.at.length === 0) return [];
    const follows = at.every((later) =>
      before.at.some((earlier) =>
        earlier.step === later.step
          ? earlier.at < later.at
          : dependents(revision, earlier.step).includes(later.step),
      ),
    );
    return follows
      ? []
      : [
          fault(
            where,
            `“${group.name}”: pass “${pass.id}” must come after pass “${before.pass.id}”. ` +
              'Add that to its prerequisites.',
          ),
        ];
  });
};

/** Sense of the passes of a group: one final pass at the end, none skipped, each after the one before. */
export const checkPassSteps = (revision: Revision, group: FastenerGroup): readonly Fault[] => [
  ...passOrder(group),
  ...inTurn(revision, group),
];
