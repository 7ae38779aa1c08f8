import { lookup } from '../job/record';
import type { JobState } from '../job/state';
import type { Part } from '../procedure';
import { stepFor } from './find-step';
import type { LooseEnd } from './loose-end';
import { trayName } from './words';

/** A foreman accepted that this part, as it is fitted now, was used again against the sheet. */
const reuseAccepted = (state: JobState, part: string): boolean =>
  state.deviations.some(
    (deviation) =>
      deviation.kind === 'reusedAgainstSheet' &&
      deviation.part === part &&
      deviation.decision !== undefined &&
      deviation.decision.word !== 'rework' &&
      state.answers.some(
        ({ id, status }) => status === 'counted' && deviation.id === `reusedAgainstSheet:${id}`,
      ),
  );

const offEnd = (state: JobState, part: Part): readonly LooseEnd[] => {
  const now = lookup(state.parts, part.id);
  if (now?.where !== 'off') return [];
  const fresh = part.starts === 'off' && now.tray === undefined;
  return [
    {
      kind: 'partOff',
      key: `partOff:${part.id}`,
      mark: `off ${now.tray ?? ''}`,
      text: fresh ? `${part.name} is not fitted` : `${part.name} is off`,
      ...(now.tray === undefined ? {} : { detail: `Lies in ${trayName(now.tray)}` }),
      ...stepFor(state, (e) => e.kind === 'fits' && e.part === part.id),
    },
  ];
};

const replacementEnd = (state: JobState, part: Part): readonly LooseEnd[] => {
  const now = lookup(state.parts, part.id);
  if (now?.replacementDue !== true || reuseAccepted(state, part.id)) return [];
  return [
    {
      kind: 'replacementDue',
      key: `replacementDue:part:${part.id}`,
      mark: `${now.where} ${now.fitted ?? ''}`,
      text: `${part.name}: a new one is due`,
      ...(now.fitted === 'reused' ? { detail: 'The same one was fitted again' } : {}),
      ...stepFor(state, (e) => e.kind === 'fits' && e.part === part.id && e.as !== 'reused'),
    },
  ];
};

/** Parts that are off, and parts that must be new and are not. */
export const partEnds = (state: JobState): readonly LooseEnd[] =>
  state.revision.parts.flatMap((part) => [...offEnd(state, part), ...replacementEnd(state, part)]);

/** Kit items neither fitted nor declared left over. */
export const kitEnds = (state: JobState): readonly LooseEnd[] =>
  state.revision.kit.flatMap((item): LooseEnd[] => {
    const now = lookup(state.kit, item.id);
    if (now === undefined || now.used + now.leftOver >= item.quantity) return [];
    const rest = item.quantity - now.used - now.leftOver;
    return [
      {
        kind: 'kitUnaccounted',
        key: `kitUnaccounted:${item.id}`,
        mark: `${now.used} used ${now.leftOver} left over`,
        text: `${item.name}: ${rest} of ${item.quantity} not accounted for`,
        detail: `${now.used} fitted, ${now.leftOver} left over`,
        ...stepFor(state, (e) => 'uses' in e && e.uses.some(({ kitItem }) => kitItem === item.id)),
      },
    ];
  });
