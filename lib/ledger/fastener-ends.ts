import { lookup } from '../job/record';
import type { FastenerState, FastenerStage, JobState } from '../job/state';
import { fastenerName, type Effect, type Fastener, type FastenerGroup } from '../procedure';
import { stepFor } from './find-step';
import type { LooseEnd } from './loose-end';
import { origin, several, trayName } from './words';

type OpenStage = Exclude<FastenerStage, 'untouched' | 'final'>;

const stageWords: Readonly<Record<OpenStage, string>> = {
  off: 'is off',
  loose: 'is loose',
  runIn: 'is run in by hand',
  snug: 'is snug, not final',
  intermediate: 'is at an intermediate pass, not final',
};

/** A bolt that is off is settled by running it in, any other by its final pass. */
const settles =
  (group: FastenerGroup, stage: OpenStage) =>
  (effect: Effect): boolean =>
    stage === 'off'
      ? effect.kind === 'runsIn' && effect.groups.includes(group.id)
      : effect.kind === 'tightens' &&
        effect.group === group.id &&
        group.passes.some((pass) => pass.id === effect.pass && pass.stage === 'final');

const where = (now: FastenerState, fastener: Fastener): string =>
  now.lies === undefined
    ? origin(fastener)
    : `${trayName(now.lies.tray)} place ${now.lies.place}, ${origin(fastener)}`;

const openEnd = (
  state: JobState,
  group: FastenerGroup,
  fastener: Fastener,
): readonly LooseEnd[] => {
  const now = lookup(state.fasteners, fastener.id);
  if (now === undefined || now.stage === 'untouched' || now.stage === 'final') return [];
  const says = `${fastenerName(group, fastener)} ${stageWords[now.stage]}`;
  return [
    {
      kind: 'fastenerOpen',
      key: `fastenerOpen:${fastener.id}`,
      mark: [now.stage, now.lies?.tray ?? '', now.lies?.place ?? ''].join(' '),
      text: now.stage === 'off' ? `${says}: ${where(now, fastener)}` : says,
      ...(now.stage === 'off' ? {} : { detail: origin(fastener) }),
      ...stepFor(state, settles(group, now.stage)),
    },
  ];
};

const due = (
  state: JobState,
  group: FastenerGroup,
  what: 'threadLockerDue' | 'replacementDue',
): readonly Fastener[] =>
  group.fasteners.filter((fastener) => lookup(state.fasteners, fastener.id)?.[what] === true);

const dueEnds = (state: JobState, group: FastenerGroup): readonly LooseEnd[] => {
  const unlocked = due(state, group, 'threadLockerDue');
  const spent = due(state, group, 'replacementDue');
  const marked = (fasteners: readonly Fastener[]) => fasteners.map(({ id }) => id).join(' ');
  return [
    ...(unlocked.length === 0
      ? []
      : [
          {
            kind: 'threadLockerDue' as const,
            key: `threadLockerDue:${group.id}`,
            mark: marked(unlocked),
            text: `${several(group, unlocked)}: thread-locker is due`,
            ...stepFor(
              state,
              (e) =>
                e.kind === 'applies' &&
                e.consumable === group.threadLocker &&
                e.groups.includes(group.id),
            ),
          },
        ]),
    ...(spent.length === 0
      ? []
      : [
          {
            kind: 'replacementDue' as const,
            key: `replacementDue:group:${group.id}`,
            mark: marked(spent),
            text: `${several(group, spent)}: ${spent.length === 1 ? 'a new one is' : 'new ones are'} due`,
            ...stepFor(
              state,
              (e) => e.kind === 'runsIn' && e.fasteners === 'new' && e.groups.includes(group.id),
            ),
          },
        ]),
  ];
};

/** Fasteners that were opened and are not final, and what is due on them. Which hole each came from is in the text. */
export const fastenerEnds = (state: JobState): readonly LooseEnd[] =>
  state.revision.groups.flatMap((group) => [
    ...group.fasteners.flatMap((fastener) => openEnd(state, group, fastener)),
    ...dueEnds(state, group),
  ]);
