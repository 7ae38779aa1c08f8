import { toleranceInterval } from '../fastening';
import { askedValue, judgeValue } from '../job';
import type { Reading } from '../job/state';
import { implausible, type Explanation } from '../metrology';
import type { ValueAsk } from '../procedure';
import { nameMixUp, toCanonical, type Measured, type Unit } from '../quantity';
import { takeCount } from './count';
import { draftQuestionText, figureOf, spokenFigure, storeDraft } from './draft';
import { ask, refuse, show } from './happen';
import { wantFor, type ValueIntent } from './number-want';
import type { Draft, KioskEnv, KioskState, KioskStep, Oddity, Via } from './state';
import { toolInHand } from './torque-tool';
import {
  currentStep,
  isNutReading,
  openWants,
  standingReading,
  wantLabel,
  type Want,
} from './wanted';

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
  fastener: string | undefined,
  reading: Measured,
  expandedUncertainty: number | undefined,
): Explanation => {
  const interval = toleranceInterval(askedValue(state.job, ask, fastener).specification);
  const told = judgeValue(state.job, ask, fastener, reading, expandedUncertainty);
  const mixUp =
    interval === undefined || told.verdict !== 'outOfSpec'
      ? undefined
      : nameMixUp(reading.value, reading.unit, interval);
  return mixUp === undefined ? told : { ...told, sentence: `${told.sentence} ${mixUp.text}` };
};

/** The fastener that the order wants before this one; none once a changed order is noted for the step. */
const passedOver = (state: KioskState, want: Want): string | undefined => {
  if (isNutReading(want.ask)) return undefined; // turning a nut before it seats tightens nothing
  const step = currentStep(state.job);
  const noted = state.job.deviations.some((d) => d.step === step.id && d.kind === 'orderChanged');
  const next = openWants(state.job, step).find(({ ask }) => ask.id === want.ask.id);
  const first = standingReading(state.job, step.id, want) === undefined;
  return !first || noted || next === undefined || next.fastener === want.fastener
    ? undefined
    : wantLabel(state.job, next);
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
  const spec = askedValue(state.job, want.ask, want.fastener).specification;
  const interval = toleranceInterval(spec);
  const unit = intent.unit ?? spec.unit;
  const canonical = toCanonical(intent.value, unit);
  const tool =
    env.cabinet === undefined
      ? undefined
      : toolInHand(state.job, want.ask, want.fastener, canonical, env.cabinet, env.now);
  const { verdict, sentence } = explain(
    state,
    want.ask,
    want.fastener,
    { value: intent.value, unit },
    tool?.expandedUncertainty,
  );
  const earlier = standingReading(state.job, step.id, want);
  if (earlier?.value === intent.value && earlier.unit === unit && state.question === undefined)
    return show(state, via, {
      tone: 'plain',
      text: `${wantLabel(state.job, want)}: ${spokenFigure(intent.value, unit)} is already in`,
    });
  const next = passedOver(state, want);
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
    ...(next === undefined
      ? {}
      : { orderChanged: `${wantLabel(state.job, want)} was tightened before ${next}` }),
    replaces: earlier === undefined ? [] : [earlier.id],
  };
  const oddities: readonly Oddity[] = [
    ...(via.by === 'voice' && via.certainty === 'unsure'
      ? [{ kind: 'unsure' as const, why: via.why ?? 'not heard well' }]
      : []),
    ...(implausible(canonical, interval) ? [{ kind: 'implausible' as const }] : []),
    ...(verdict === 'outOfSpec' ? [{ kind: 'outOfSpec' as const }] : []),
    ...(unit !== spec.unit ? [{ kind: 'otherUnit' as const }] : []),
    ...(next === undefined ? [] : [{ kind: 'outOfOrder' as const, next }]),
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
