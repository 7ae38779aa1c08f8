import { generalFigure, type GeneralFigure } from '../fastening';
import type { FastenerGroup, Revision } from '../procedure';
import type { ShopSettings } from '../shop';

/** Whether the sheet puts anything on the threads: what is wet turns easier, and less torque gives the same preload. */
const isWet = (revision: Revision, group: FastenerGroup): boolean =>
  group.threadLocker !== undefined ||
  revision.steps.some(({ effects }) =>
    effects.some((effect) => effect.kind === 'applies' && effect.groups.includes(group.id)),
  );

/**
 * A general figure for fasteners without one, where the shop wants it. None for safety-critical ones, none for plugs
 * (their washer and hollow thread are not those of a bolt), none where thread or strength class are not known.
 */
export const generalForGroup = (
  revision: Revision,
  group: FastenerGroup,
  { showGeneralFigures = false }: ShopSettings,
): GeneralFigure | undefined => {
  if (group.noun === 'plug') return undefined;
  const { thread, strengthClass, safetyCritical } = group;
  const condition = isWet(revision, group) ? 'oiled' : 'dry';
  const figure = generalFigure(
    { thread, strengthClass, condition, safetyCritical },
    { showGeneralFigures },
  );
  return figure.ok ? figure.value : undefined;
};
