import type { Happening } from '../job';
import { verdictWords } from '../metrology';
import { unitFacts, type Unit } from '../quantity';
import { answered, happenAndShow } from './happen';
import type { Draft, Figure, KioskEnv, KioskState, KioskStep, Oddity, Outcome, Via } from './state';

/** As spoken: no rounding, the unit behind it. */
export const spokenFigure = (value: number, unit: Unit): string =>
  unit === 'deg' ? `${value}°` : `${value} ${unitFacts[unit].symbol}`;

export const figureOf = ({ value, unit, label, verdict, sentence }: Draft): Figure => ({
  value,
  unit,
  label,
  verdict,
  sentence,
});

const readingHappenings = (draft: Draft): readonly Happening[] => [
  ...draft.replaces.map((entry): Happening => ({ type: 'entryWithdrawn', entry })),
  {
    type: 'readingTaken',
    step: draft.step,
    ask: draft.ask,
    ...(draft.fastener === undefined ? {} : { fastener: draft.fastener }),
    value: draft.value,
    unit: draft.unit,
    ...(draft.tool === undefined ? {} : { tool: { ...draft.tool } }),
    ...(draft.adapter === undefined ? {} : { adapter: draft.adapter }),
  },
  ...(draft.orderChanged === undefined
    ? []
    : [
        {
          type: 'deviationNoted' as const,
          kind: 'orderChanged' as const,
          step: draft.step,
          reason: { text: draft.orderChanged },
          ...(draft.fastener === undefined ? {} : { fastener: draft.fastener }),
        },
      ]),
];

/** Stores a judged value: it is provisional until the step is done, and can be taken back. */
export const storeDraft = (
  state: KioskState,
  draft: Draft,
  via: Via,
  askedBack: boolean,
  env: KioskEnv,
): KioskStep => {
  const { chosen: _served, ...rest } = answered(state);
  const text = `${draft.label}: ${spokenFigure(draft.value, draft.unit)}, ${verdictWords[draft.verdict]}`;
  const outcome: Omit<Outcome, 'said'> = {
    tone: draft.verdict === 'outOfSpec' ? 'bad' : 'good',
    text,
    figure: figureOf(draft),
  };
  return happenAndShow(rest, readingHappenings(draft), { via, askedBack }, env, outcome, [
    { kind: 'say', text },
  ]);
};

const oddityText = (oddity: Oddity, draft: Draft): string => {
  switch (oddity.kind) {
    case 'unsure':
      return oddity.why;
    case 'implausible':
      return 'far from the target';
    case 'outOfSpec':
      return 'out of spec';
    case 'otherUnit':
      return `said in ${unitFacts[draft.unit].symbol}`;
    case 'outOfOrder':
      return `${oddity.next} comes first in the order`;
    case 'contradicts':
      return `${oddity.earlier} was given before`;
  }
};

export const draftQuestionText = (draft: Draft, oddities: readonly Oddity[]): string =>
  `${draft.label}: ${spokenFigure(draft.value, draft.unit)}? ${oddities.map((o) => oddityText(o, draft)).join(', ')}`;
