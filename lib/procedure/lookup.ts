import type { Drawing } from './drawing';
import type {
  Consumable,
  Fastener,
  FastenerGroup,
  Fluid,
  KitItem,
  Part,
  Pass,
  Revision,
} from './revision';
import type { Ask, Effect, Step } from './step';

const byId = <T extends { readonly id: string }>(all: readonly T[], id: string): T | undefined =>
  all.find((one) => one.id === id);

export const stepOf = (revision: Revision, id: string): Step | undefined =>
  byId(revision.steps, id);
export const askOf = (step: Step, id: string): Ask | undefined => byId(step.asks, id);
export const partOf = (revision: Revision, id: string): Part | undefined =>
  byId(revision.parts, id);
export const kitItemOf = (revision: Revision, id: string): KitItem | undefined =>
  byId(revision.kit, id);
export const fluidOf = (revision: Revision, id: string): Fluid | undefined =>
  byId(revision.fluids, id);
export const consumableOf = (revision: Revision, id: string): Consumable | undefined =>
  byId(revision.consumables, id);
export const drawingOf = (revision: Revision, id: string): Drawing | undefined =>
  byId(revision.drawings, id);
export const groupOf = (revision: Revision, id: string): FastenerGroup | undefined =>
  byId(revision.groups, id);
export const passOf = (group: FastenerGroup, id: string): Pass | undefined =>
  byId(group.passes, id);

/** The fastener of that id with the group it belongs to. */
export const fastenerOf = (
  revision: Revision,
  id: string,
): { readonly group: FastenerGroup; readonly fastener: Fastener } | undefined => {
  for (const group of revision.groups) {
    const fastener = byId(group.fasteners, id);
    if (fastener !== undefined) return { group, fastener };
  }
  return undefined;
};

/** The place of a step in the sheet, counted from 1; 0 where the sheet has no such step. */
export const stepNumber = (revision: Revision, id: string): number =>
  revision.steps.findIndex((step) => step.id === id) + 1;

/** The steps whose effects include one such as asked, in the order of the sheet. */
export const stepsThat = (revision: Revision, does: (effect: Effect) => boolean): readonly Step[] =>
  revision.steps.filter((step) => step.effects.some(does));

/** "Cover bolt 3"; a lone fastener goes by its group: "Pulley bolt". */
export const fastenerName = (group: FastenerGroup, fastener: Fastener): string =>
  group.fasteners.length === 1 ? singularName(group) : `${singularName(group)} ${fastener.label}`;

/** "Cover bolt", from "Cover bolts", "Cover bolt" or "Cover". */
const singularName = (group: FastenerGroup): string => {
  const name = group.name.toLowerCase();
  if (name.endsWith(`${group.noun}s`)) return group.name.slice(0, -1);
  return name.endsWith(group.noun) ? group.name : `${group.name} ${group.noun}`;
};

/** All steps that must follow the named one, directly or through others, in the order of the sheet; without itself. */
export const dependents = (revision: Revision, stepId: string): readonly string[] => {
  const found = new Set<string>([stepId]);
  for (let before = 0; before !== found.size;) {
    before = found.size;
    for (const step of revision.steps)
      if (step.after.some((id) => found.has(id))) found.add(step.id);
  }
  return revision.steps.map((step) => step.id).filter((id) => id !== stepId && found.has(id));
};

const touches = (effect: Effect, group: string): boolean =>
  effect.kind === 'tightens'
    ? effect.group === group
    : (effect.kind === 'takesOff' || effect.kind === 'loosens' || effect.kind === 'runsIn') &&
      effect.groups.includes(group);

/** Whether the group comes with the kit: the first that the sheet does with it is to run it in. */
export const comesWithKit = (revision: Revision, group: string): boolean => {
  const first = revision.steps.flatMap((step) => step.effects).find((e) => touches(e, group));
  return first?.kind === 'runsIn';
};
