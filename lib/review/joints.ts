import { askedEach, askSpecification } from '../job';
import { fastenerName, fastenerOf, groupOf, type Revision, type ValueAsk } from '../procedure';
import type { Unit } from '../quantity';
import type { Joint } from './sections';

const valueAsks = (revision: Revision): readonly ValueAsk[] =>
  revision.steps.flatMap(({ asks }) => asks.flatMap((ask) => (ask.kind === 'value' ? [ask] : [])));

const nameOf = (revision: Revision, ask: ValueAsk, fastener: string | undefined): string => {
  const found = fastener === undefined ? undefined : fastenerOf(revision, fastener);
  if (found !== undefined)
    return `${fastenerName(found.group, found.fastener)}: ${ask.label.toLowerCase()}`;
  const group = ask.of.kind === 'pass' ? groupOf(revision, ask.of.group) : undefined;
  return group === undefined ? ask.label : `${group.name}: ${ask.label.toLowerCase()}`;
};

/** Everything of which a revision wants values, in the order of its sheet. */
export const jointsOf = (revision: Revision): readonly Joint[] =>
  valueAsks(revision).flatMap((ask) => {
    const { procedure } = revision;
    const each = askedEach(revision, ask);
    return each.length === 0
      ? [{ procedure, ask: ask.id, name: nameOf(revision, ask, undefined) }]
      : each.map(({ id }) => ({
          procedure,
          ask: ask.id,
          fastener: id,
          name: nameOf(revision, ask, id),
        }));
  });

/** The unit of the sheet for an ask, where the revision has such a one. */
export const jointUnit = (revision: Revision, ask: string): Unit | undefined => {
  const found = valueAsks(revision).find(({ id }) => id === ask);
  return found === undefined ? undefined : askSpecification(revision, found).unit;
};
