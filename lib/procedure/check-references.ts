import { unreachable } from '../result';
import { fault, repeated, type Fault } from './fault';
import {
  consumableOf,
  drawingOf,
  fluidOf,
  groupOf,
  kitItemOf,
  partOf,
  passOf,
  stepOf,
} from './lookup';
import type { FastenerGroup, Revision } from './revision';
import type { Ask, Effect, Step } from './step';

type Ids = readonly { readonly id: string }[];

const twice = (where: string, what: string, ids: Ids): readonly Fault[] =>
  repeated(ids.map(({ id }) => id)).map((id) =>
    fault(`${where}/${id}`, `Two ${what} are called “${id}”: give each its own id.`),
  );

const duplicates = (revision: Revision): readonly Fault[] => [
  ...twice('kit', 'kit items', revision.kit),
  ...twice('tools', 'tools', revision.tools),
  ...twice('consumables', 'consumables', revision.consumables),
  ...twice('fluids', 'fluids', revision.fluids),
  ...twice('parts', 'parts', revision.parts),
  ...twice('groups', 'groups', revision.groups),
  ...twice('drawings', 'drawings', revision.drawings),
  ...twice('steps', 'steps', revision.steps),
  ...twice(
    'groups',
    'fasteners (of any group)',
    revision.groups.flatMap((group) => group.fasteners),
  ),
  ...revision.groups.flatMap((group) => twice(`groups/${group.id}`, 'passes', group.passes)),
  ...revision.drawings.flatMap((one) => twice(`drawings/${one.id}`, 'holes', one.holes)),
  ...revision.steps.flatMap((step) => twice(`steps/${step.id}`, 'asks', step.asks)),
];

type Has = (revision: Revision, id: string) => unknown;

const unknown = (
  revision: Revision,
  where: string,
  what: string,
  has: Has,
  ids: readonly string[],
): readonly Fault[] =>
  ids
    .filter((id) => has(revision, id) === undefined)
    .map((id) => fault(where, `There is no ${what} “${id}”: add it or correct the name.`));

const passFaults = (
  revision: Revision,
  where: string,
  groupId: string,
  passId: string,
): readonly Fault[] => {
  const group = groupOf(revision, groupId);
  if (group === undefined) return unknown(revision, where, 'group', groupOf, [groupId]);
  return passOf(group, passId) === undefined
    ? [fault(where, `“${group.name}” has no pass “${passId}”: name one of its own passes.`)]
    : [];
};

const effectFaults = (revision: Revision, where: string, effect: Effect): readonly Fault[] => {
  const missing = (what: string, has: Has, ids: readonly string[]) =>
    unknown(revision, where, what, has, ids);
  const uses = (all: readonly { readonly kitItem: string }[]) =>
    missing(
      'kit item',
      kitItemOf,
      all.map(({ kitItem }) => kitItem),
    );
  switch (effect.kind) {
    case 'drains':
    case 'fills':
      return missing('fluid', fluidOf, [effect.fluid]);
    case 'takesOff':
      return [
        ...missing('part', partOf, effect.parts),
        ...missing('group', groupOf, effect.groups),
      ];
    case 'fits':
      return [...missing('part', partOf, [effect.part]), ...uses(effect.uses)];
    case 'loosens':
      return missing('group', groupOf, effect.groups);
    case 'runsIn':
      return [...missing('group', groupOf, effect.groups), ...uses(effect.uses)];
    case 'tightens':
      return passFaults(revision, where, effect.group, effect.pass);
    case 'applies':
      return [
        ...missing('consumable', consumableOf, [effect.consumable]),
        ...missing('group', groupOf, effect.groups),
        ...missing('part', partOf, effect.parts),
      ];
    default:
      return unreachable(effect);
  }
};

const askFaults = (revision: Revision, where: string, ask: Ask): readonly Fault[] => {
  if (ask.kind === 'choice') return unknown(revision, where, 'part', partOf, [ask.part]);
  if (ask.kind !== 'value') return [];
  if (ask.of.kind === 'pass') return passFaults(revision, where, ask.of.group, ask.of.pass);
  return ask.of.kind === 'fluid' ? unknown(revision, where, 'fluid', fluidOf, [ask.of.fluid]) : [];
};

const stepFaults = (revision: Revision, step: Step): readonly Fault[] => {
  const where = `steps/${step.id}`;
  return [
    ...unknown(revision, where, 'step', stepOf, step.after),
    ...unknown(revision, where, 'group', groupOf, step.shows),
    ...unknown(revision, where, 'drawing', drawingOf, step.drawing ? [step.drawing] : []),
    ...step.effects.flatMap((effect) => effectFaults(revision, where, effect)),
    ...step.asks.flatMap((ask) => askFaults(revision, `${where}/${ask.id}`, ask)),
  ];
};

const groupFaults = (revision: Revision, group: FastenerGroup): readonly Fault[] => {
  const where = `groups/${group.id}`;
  const drawing = drawingOf(revision, group.drawing);
  const holes = new Set(drawing?.holes.map(({ id }) => id));
  const locker = group.threadLocker ? consumableOf(revision, group.threadLocker) : undefined;
  return [
    ...unknown(revision, where, 'drawing', drawingOf, [group.drawing]),
    ...(drawing === undefined ? [] : group.fasteners)
      .filter(({ hole }) => !holes.has(hole))
      .map(({ label, hole }) =>
        fault(
          where,
          `“${group.name}” ${label} is in hole “${hole}”, which is not on its drawing: mark the hole.`,
        ),
      ),
    ...unknown(
      revision,
      where,
      'consumable',
      consumableOf,
      group.threadLocker ? [group.threadLocker] : [],
    ),
    ...(locker !== undefined && locker.kind !== 'threadLocker'
      ? [fault(where, `“${locker.name}” is no thread-locker: name one for “${group.name}”.`)]
      : []),
  ];
};

/** Ids that name nothing, and ids that name two things. */
export const checkReferences = (revision: Revision): readonly Fault[] => [
  ...duplicates(revision),
  ...revision.groups.flatMap((group) => groupFaults(revision, group)),
  ...revision.steps.flatMap((step) => stepFaults(revision, step)),
];
