import { balanceFluid, fillLimits, type FluidBalance } from '../fluids';
import { capacityL } from '../job/fluids';
import { lookup } from '../job/record';
import type { FluidState, JobState } from '../job/state';
import type { Fluid } from '../procedure';
import { stepFor, wasDone } from './find-step';
import type { LooseEnd } from './loose-end';
import { withUnit } from './words';

const litres = (value: number): string => withUnit(value, 'L');

/** What is wrong with what went out and in: in a word each, and in full. */
interface Finding {
  readonly word: string;
  readonly text: string;
}

/** Fluid that must be new and was poured back all the same. */
const pouredBack = (fluid: Fluid, { returnedL = 0 }: FluidState): readonly Finding[] =>
  fluid.mayReturn || returnedL === 0
    ? []
    : [
        {
          word: 'was poured back',
          text: `${litres(returnedL)} of the old was poured back; the sheet wants all of it new.`,
        },
      ];

const fillWords = { under: 'is underfilled', within: undefined, over: 'is overfilled' } as const;

const wordOf = (balance: FluidBalance): string =>
  [fillWords[balance.fill], ...(balance.balances ? [] : ['does not balance'])]
    .filter((word) => word !== undefined)
    .join(' and ');

/** What went in against what came out and against the fill limits. */
const unbalanced = (state: JobState, fluid: Fluid, now: FluidState): readonly Finding[] => {
  const { drainedL, spilledL = 0, returnedL = 0, filledL } = now;
  const unread = (what: string): readonly Finding[] => [
    { word: 'does not balance', text: `The volume ${what} was not read.` },
  ];
  if (filledL === undefined) return unread('filled');
  const capacity = capacityL(state, fluid);
  if (!capacity.ok) return [{ word: 'does not balance', text: capacity.error.message }];
  // Where the drained was not read, the fill limits can still be told: as if as much came out as went in.
  const outL = drainedL ?? Math.max(0, filledL + returnedL - spilledL);
  const balance = balanceFluid(
    { drainedL: outL, spilledL, returnedL, newL: filledL },
    fillLimits(capacity.value, fluid.toleranceL),
    fluid.toleranceL,
  );
  const told = !balance.ok
    ? [{ word: 'does not balance', text: balance.error.message }]
    : balance.value.findings.length === 0
      ? []
      : [{ word: wordOf(balance.value), text: balance.value.findings.join(' ') }];
  return [...(drainedL === undefined ? unread('drained') : []), ...told];
};

/** The volumes as they are now. What a job never asks leaves no trace, so that signatures given before stay good. */
const markOf = (state: JobState, fluid: Fluid, now: FluidState): string =>
  [
    `drained ${now.drainedL ?? 'unread'} filled ${now.filledL ?? 'unread'}`,
    ...(now.spilledL === undefined ? [] : [`spilled ${now.spilledL}`]),
    ...(now.returnedL === undefined ? [] : [`returned ${now.returnedL}`]),
    ...(fluid.filter === undefined
      ? []
      : [`filter ${lookup(state.parts, fluid.filter.part)?.fitted ?? 'kept'}`]),
  ].join(' ');

const outEnd = (state: JobState, fluid: Fluid, now: FluidState): LooseEnd => {
  const capacity = capacityL(state, fluid);
  const holds = litres(capacity.ok ? capacity.value : fluid.capacityL);
  return {
    kind: 'fluidOut',
    key: `fluidOut:${fluid.id}`,
    mark: `out ${now.drainedL ?? 'unread'}`,
    text: `${fluid.name} is out`,
    detail: `${now.drainedL === undefined ? '' : `Drained ${litres(now.drainedL)}, `}capacity ${holds}`,
    ...stepFor(state, (e) => e.kind === 'fills' && e.fluid === fluid.id),
  };
};

/** Fluids that are out; and of those drained and filled again, the ones whose volumes do not fit. */
export const fluidEnds = (state: JobState): readonly LooseEnd[] =>
  state.revision.fluids.flatMap((fluid): LooseEnd[] => {
    const now = lookup(state.fluids, fluid.id);
    if (now === undefined) return [];
    if (now.state === 'out') return [outEnd(state, fluid, now)];
    const drained = wasDone(state, (e) => e.kind === 'drains' && e.fluid === fluid.id);
    const findings = [
      ...pouredBack(fluid, now),
      ...(now.state === 'refilled' && drained ? unbalanced(state, fluid, now) : []),
    ];
    if (findings.length === 0) return [];
    return [
      {
        kind: 'fluidUnbalanced',
        key: `fluidUnbalanced:${fluid.id}`,
        mark: markOf(state, fluid, now),
        text: `${fluid.name} ${[...new Set(findings.map(({ word }) => word))].join(' and ')}`,
        detail: findings.map(({ text }) => text).join(' '),
        ...stepFor(
          state,
          (e) =>
            e.kind === (now.drainedL === undefined ? 'drains' : 'fills') && e.fluid === fluid.id,
        ),
      },
    ];
  });
