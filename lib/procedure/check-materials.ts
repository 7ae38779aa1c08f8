import { checkFluids } from './check-fluids';
import { fault, type Fault, type Finding } from './fault';
import { stepsThat } from './lookup';
import type { KitItem, Part, Revision } from './revision';

const kitFaults = (revision: Revision, item: KitItem): readonly Fault[] => {
  const used = revision.steps
    .flatMap((step) => step.effects)
    .flatMap((effect) => ('uses' in effect ? effect.uses : []))
    .filter(({ kitItem }) => kitItem === item.id)
    .reduce((sum, { quantity }) => sum + quantity, 0);
  return used > item.quantity
    ? [
        fault(
          `kit/${item.id}`,
          `The kit holds ${item.quantity} of “${item.name}” and the steps use ${used}.`,
        ),
      ]
    : [];
};

const partFaults = (revision: Revision, part: Part): readonly Fault[] => {
  const where = `parts/${part.id}`;
  const fits = revision.steps
    .flatMap((step) => step.effects)
    .filter((e) => e.kind === 'fits' && e.part === part.id);
  const comesOff =
    stepsThat(revision, (e) => e.kind === 'takesOff' && e.parts.includes(part.id)).length > 0;
  if (fits.length === 0) {
    if (comesOff) return [fault(where, `“${part.name}” comes off and no step fits it again.`)];
    return part.starts === 'off'
      ? [fault(where, `“${part.name}” comes with the kit and no step fits it.`)]
      : [];
  }
  return part.reuse === 'never' && fits.some((e) => e.kind === 'fits' && e.as === 'reused')
    ? [fault(where, `“${part.name}” must never be used again, but a step fits the same one.`)]
    : [];
};

/** Sense of kit, fluids and parts: enough of each, and what goes out comes back. */
export const checkMaterials = (revision: Revision): readonly Finding[] => [
  ...revision.kit.flatMap((item) => kitFaults(revision, item)),
  ...checkFluids(revision),
  ...revision.parts.flatMap((part) => partFaults(revision, part)),
];
