import { toleranceInterval } from '../fastening/specification';
import { askSpecification, decisionRuleFor, type Happening } from '../job';
import type { Reading } from '../job/state';
import { explainVerdict, implausible, type Explanation, type Verdict } from '../metrology';
import {
  nameMixUp,
  quantityOf,
  toCanonical,
  unitFacts,
  type Measured,
  type Unit,
} from '../quantity';
import type { ValueAsk } from '../procedure';
import type { Intent } from '../voice/intent';
import { answered, ask, happenAndShow, refuse, show } from './happen';
import type { Draft, Figure, KioskEnv, KioskState, KioskStep, Oddity, Outcome, Via } from './state';
import {
  allWants,
  currentStep,
  groupOfAsk,
  openWants,
  quantityWanted,
  standing,
  standingReading,
  wantLabel,
  type Want,
} from './wanted';

type ValueIntent = Extract<Intent, { kind: 'value' }>;

/** As spoken: no rounding, the unit behind it. */
export const spokenFigure = (value: number, unit: Unit): string =>
  unit === 'deg' ? `${value}°` : `${value} ${unitFacts[unit].symbol}`;

const takesNumber = (want: Want): boolean => want.ask.kind === 'value' || want.ask.kind === 'count';

const fastenerLabel = (state: KioskState, want: Want): string | undefined =>
  want.ask.kind === 'value'
    ? groupOfAsk(state.job, want.ask)?.fasteners.find(({ id }) => id === want.fastener)?.label
    : undefined;

/** Which ask a spoken number answers: the named fastener, the chosen one, else the first that still wants one. */
const wantFor = (state: KioskState, intent: ValueIntent): Want | string => {
  const step = currentStep(state.job);
  const numbers = allWants(state.job, step).filter(takesNumber);
  if (numbers.length === 0) return 'This step asks for no value';
  if (state.job.steps[step.id]?.status !== 'open')
    return 'This step is done. Say "reopen this step" to measure again';
  const { label, unit } = intent;
  const fits = (want: Want): boolean =>
    unit === undefined ||
    (want.ask.kind === 'value' && quantityWanted(state.job, want.ask) === quantityOf(unit));
  const fitting = numbers.filter(fits);
  if (fitting.length === 0)
    return `Nothing here is measured in ${unit === undefined ? 'that unit' : unitFacts[unit].symbol}`;
  const open = openWants(state.job, step).filter((want) => takesNumber(want) && fits(want));
  const preferOpen = (wants: readonly Want[]): Want | undefined =>
    wants.find((want) => open.some((o) => o.ask === want.ask && o.fastener === want.fastener)) ??
    wants[0];
  if (label !== undefined)
    return (
      preferOpen(fitting.filter((want) => fastenerLabel(state, want) === label)) ??
      `There is no ${label} in this step`
    );
  if (state.chosen !== undefined) {
    const chosen = preferOpen(fitting.filter((want) => want.fastener === state.chosen));
    if (chosen !== undefined) return chosen;
  }
  return (
    open[0] ??
    (fitting.length === 1 && fitting[0] !== undefined
      ? fitting[0]
      : 'All values of this step are in. Name the one to change, for example "bolt three torqued ten"')
  );
};

const verdictWords: Record<Verdict, string> = {
  inSpec: 'in spec',
  notProvable: 'not provable',
  outOfSpec: 'out of spec',
  noFigure: 'recorded, no figure given',
};
export const verdictText = (verdict: Verdict): string => verdictWords[verdict];

const figureOf = ({ value, unit, label, verdict, sentence }: Draft): Figure => ({
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
  },
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
  const text = `${draft.label}: ${spokenFigure(draft.value, draft.unit)}, ${verdictText(draft.verdict)}`;
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
    case 'contradicts':
      return `${oddity.earlier} was given before`;
  }
};

export const draftQuestionText = (draft: Draft, oddities: readonly Oddity[]): string =>
  `${draft.label}: ${spokenFigure(draft.value, draft.unit)}? ${oddities.map((o) => oddityText(o, draft)).join(', ')}`;

const contradiction = (
  state: KioskState,
  earlier: Reading | undefined,
  value: number,
  unit: Unit,
): readonly Oddity[] => {
  const pending = state.question?.kind === 'value' ? state.question.draft : undefined;
  const before = pending ?? earlier;
  return before === undefined ||
    (before.value === value && before.unit === unit && pending === undefined)
    ? []
    : [{ kind: 'contradicts', earlier: spokenFigure(before.value, before.unit) }];
};

/** The verdict and, in one sentence, why; a figure that fits in another unit or with its point moved is named. */
const explain = (
  state: KioskState,
  ask: ValueAsk,
  reading: Measured,
  expandedUncertainty: number | undefined,
): Explanation => {
  const interval = toleranceInterval(askSpecification(state.job.revision, ask));
  const told = explainVerdict(
    reading,
    interval,
    expandedUncertainty,
    decisionRuleFor(state.job.revision, ask),
  );
  const mixUp =
    interval === undefined || told.verdict !== 'outOfSpec'
      ? undefined
      : nameMixUp(reading.value, reading.unit, interval);
  return mixUp === undefined ? told : { ...told, sentence: `${told.sentence} ${mixUp.text}` };
};

/** A heard or typed number: shown, judged, and stored at once only when nothing about it is odd. */
export const takeValue = (
  state: KioskState,
  intent: ValueIntent,
  via: Via,
  env: KioskEnv,
): KioskStep => {
  const want = wantFor(state, intent);
  if (typeof want === 'string') return refuse(state, via, want);
  const step = currentStep(state.job);
  if (want.ask.kind === 'count') return takeCount(state, want, intent.value, via, env);
  if (want.ask.kind !== 'value') return refuse(state, via, 'This step asks for no value');
  const spec = askSpecification(state.job.revision, want.ask);
  const interval = toleranceInterval(spec);
  const unit = intent.unit ?? spec.unit;
  const canonical = toCanonical(intent.value, unit);
  const torque = want.ask.of.kind === 'pass' && want.ask.of.measure === 'torque';
  const tool = torque ? env.toolFor?.(canonical) : undefined;
  const { verdict, sentence } = explain(
    state,
    want.ask,
    { value: intent.value, unit },
    tool?.expandedUncertainty,
  );
  const earlier = standingReading(state.job, step.id, want);
  if (earlier?.value === intent.value && earlier.unit === unit && state.question === undefined)
    return show(state, via, {
      tone: 'plain',
      text: `${wantLabel(state.job, want)}: ${spokenFigure(intent.value, unit)} is already in`,
    });
  const draft: Draft = {
    step: step.id,
    ask: want.ask.id,
    ...(want.fastener === undefined ? {} : { fastener: want.fastener }),
    label: wantLabel(state.job, want),
    value: intent.value,
    unit,
    canonical,
    interval,
    verdict,
    sentence,
    ...(tool === undefined ? {} : { tool }),
    replaces: earlier === undefined ? [] : [earlier.id],
  };
  const oddities: readonly Oddity[] = [
    ...(via.by === 'voice' && via.certainty === 'unsure'
      ? [{ kind: 'unsure' as const, why: via.why ?? 'not heard well' }]
      : []),
    ...(implausible(canonical, interval) ? [{ kind: 'implausible' as const }] : []),
    ...(verdict === 'outOfSpec' ? [{ kind: 'outOfSpec' as const }] : []),
    ...(unit !== spec.unit ? [{ kind: 'otherUnit' as const }] : []),
    ...contradiction(state, earlier, intent.value, unit),
  ];
  if (oddities.length === 0) return storeDraft(state, draft, via, false, env);
  const question = { kind: 'value', draft, oddities } as const;
  const asked = ask(state, via, question, draftQuestionText(draft, oddities));
  const outcome = asked.state.outcome;
  return outcome === undefined
    ? asked
    : {
        ...asked,
        state: {
          ...asked.state,
          outcome: {
            ...outcome,
            figure: figureOf(draft),
          },
        },
      };
};

const takeCount = (
  state: KioskState,
  want: Want,
  count: number,
  via: Via,
  env: KioskEnv,
): KioskStep => {
  if (want.ask.kind !== 'count') return refuse(state, via, 'This step asks for no count');
  if (!Number.isInteger(count))
    return refuse(state, via, `${want.ask.label}: a whole number is needed`);
  const step = currentStep(state.job).id;
  const earlier = standing(state.job, step, want);
  const happenings: readonly Happening[] = [
    ...(earlier === undefined ? [] : [{ type: 'entryWithdrawn' as const, entry: earlier.id }]),
    { type: 'answerGiven', step, ask: want.ask.id, answer: { kind: 'count', count } },
  ];
  const right = count === want.ask.expected;
  const text = `${want.ask.label}: ${count}${right ? '' : `, ${want.ask.expected} expected`}`;
  const unsure = via.by === 'voice' && via.certainty === 'unsure';
  if (!right || unsure || earlier !== undefined)
    return ask(
      state,
      via,
      { kind: 'confirm', text: `${text}?`, act: { kind: 'happen', happenings, done: text } },
      `${text}?`,
    );
  return happenAndShow(answered(state), happenings, { via }, env, { tone: 'good', text });
};
