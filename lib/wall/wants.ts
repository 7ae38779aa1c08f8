import type { Deviation, JobState } from '../job';
import { holdWords } from '../kiosk';
import { unsigned } from '../ledger';
import { wantKinds, type BayCard, type Want } from './card';

const forForeman: ReadonlySet<string> = new Set([holdWords.foreman, holdWords.approval]);

const undecided = (state: JobState): readonly Deviation[] =>
  state.deviations.filter(({ decision }) => decision === undefined);

const oldest = (deviations: readonly Deviation[]): string =>
  deviations.reduce(
    (first, { at }) => (Date.parse(at) < Date.parse(first) ? at : first),
    deviations[0]?.at ?? '',
  );

const decisions = (kind: 'outOfSpec' | 'decision', all: readonly Deviation[]): readonly Want[] =>
  all.length === 0 ? [] : [{ kind, since: oldest(all), count: all.length }];

const allSettled = (state: JobState): boolean =>
  Object.values(state.steps).every(({ status }) => status !== 'open');

/** What a job wants of a person now, most pressing first. A hold for parts or a break wants nobody. */
export const jobWants = (state: JobState): readonly Want[] => {
  if (state.phase === 'closed') return [];
  const open = undecided(state);
  const left = allSettled(state) && state.phase === 'running' ? unsigned(state).length : 0;
  return [
    ...(state.foremanCalledAt === undefined
      ? []
      : [{ kind: 'foremanCalled' as const, since: state.foremanCalledAt, count: 1 }]),
    ...(state.hold?.reason.text !== undefined && forForeman.has(state.hold.reason.text)
      ? [{ kind: 'waitsForForeman' as const, since: state.hold.since, count: 1 }]
      : []),
    ...decisions(
      'outOfSpec',
      open.filter(({ kind }) => kind === 'outOfSpec'),
    ),
    ...(left > 0 ? [{ kind: 'signature' as const, since: state.lastAt, count: left }] : []),
    ...decisions(
      'decision',
      open.filter(({ kind }) => kind !== 'outOfSpec'),
    ),
  ];
};

/** What a bay wants most, and how many other things it wants. */
export interface BayWant {
  readonly card: BayCard;
  readonly want: Want;
  readonly more: number;
}

const rank = ({ kind }: Want): number => wantKinds.indexOf(kind);

/** In the order of `wantKinds`. */
export const mostPressingFirst = (wants: readonly Want[]): Want[] =>
  [...wants].sort((a, b) => rank(a) - rank(b));

/** The bays that need a person now: the most pressing kind first, and of one kind who waits longest. */
export const whoNeedsSomebody = (cards: readonly BayCard[]): readonly BayWant[] =>
  cards
    .flatMap((card): BayWant[] => {
      const [want, ...others] = card.wants;
      return want === undefined ? [] : [{ card, want, more: others.length }];
    })
    .sort(
      (a, b) => rank(a.want) - rank(b.want) || Date.parse(a.want.since) - Date.parse(b.want.since),
    );
