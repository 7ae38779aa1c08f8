import { toleranceInterval, type Adapter, type ToleranceInterval } from '../fastening';
import { askedValue, atFastener, judgeValue, type ReadValue } from '../job';
import type { Reading } from '../job/state';
import { implausible, judge, type Explanation } from '../metrology';
import type { ValueAsk } from '../procedure';
import { formatQuantity, nameMixUp, toCanonical } from '../quantity';
import { setOnWrench } from './adapter-in-use';
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

const isSame = (one: ReadValue, other: ReadValue): boolean =>
  one.value === other.value &&
  one.unit === other.unit &&
  one.adapter?.wrenchMm === other.adapter?.wrenchMm &&
  one.adapter?.adapterMm === other.adapter?.adapterMm &&
  one.adapter?.angleDeg === other.adapter?.angleDeg;

const contradiction = (
  state: KioskState,
  earlier: Reading | undefined,
  read: ReadValue,
): readonly Oddity[] => {
  const pending = state.question?.kind === 'value' ? state.question.draft : undefined;
  const before = pending ?? earlier;
  return before === undefined || (isSame(before, read) && pending === undefined)
    ? []
    : [{ kind: 'contradicts', earlier: spokenFigure(before.value, before.unit) }];
};

/** A wrench that was set to the sheet's own figure although an adapter is on it. */
const forgotLever = (
  state: KioskState,
  ask: ValueAsk,
  fastener: string | undefined,
  { value, unit, adapter }: ReadValue,
): string | undefined => {
  const { specification } = askedValue(state.job, ask, fastener);
  const set = adapter === undefined ? undefined : setOnWrench(specification, state.adapter);
  const onSheet = judge(
    toCanonical(value, unit),
    toleranceInterval(specification),
    undefined,
    'simple',
  );
  return set === undefined || onSheet !== 'inSpec'
    ? undefined
    : `That is the figure without the adapter: with it set ${formatQuantity(set.torqueNm, unit)}.`;
};

/**
 * The verdict and, in one sentence, why; a figure that fits in another unit or with its point moved is named.
 * `interval`: what is accepted of the value as read.
 */
const explain = (
  state: KioskState,
  ask: ValueAsk,
  fastener: string | undefined,
  reading: ReadValue,
  interval: ToleranceInterval | undefined,
  expandedUncertainty: number | undefined,
): Explanation => {
  const told = judgeValue(state.job, ask, fastener, reading, expandedUncertainty);
  if (interval === undefined || told.verdict !== 'outOfSpec') return told;
  const mixUp = nameMixUp(reading.value, reading.unit, interval);
  const slip =
    forgotLever(state, ask, fastener, reading) ??
    (mixUp?.kind === 'otherUnit' ? `${mixUp.text} ${withUnitAgain}` : mixUp?.text);
  return slip === undefined ? told : { ...told, sentence: `${told.sentence} ${slip}` };
};

/** A yes takes the value as it was said, not as it may have been meant. */
const withUnitAgain = 'If so, answer no and give it with its unit.';

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

const withAdapter = (adapter: Adapter | undefined): { readonly adapter?: Adapter } =>
  adapter === undefined ? {} : { adapter };

/** Turning angles and what is no fastener are read without it. */
const takesAdapter = ({ of }: ValueAsk): boolean => of.kind === 'pass' && of.measure !== 'angle';

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
  const unit = intent.unit ?? spec.unit;
  const inUse = takesAdapter(want.ask) ? state.adapter : undefined;
  const read: ReadValue = { value: intent.value, unit, ...withAdapter(inUse?.adapter) };
  const interval = inUse === undefined ? toleranceInterval(spec) : setOnWrench(spec, inUse)?.window;
  const canonical = toCanonical(intent.value, unit);
  const there = atFastener(read);
  if (!there.ok) return refuse(state, via, there.error.message);
  const tool =
    env.cabinet === undefined
      ? undefined
      : toolInHand(state.job, want.ask, want.fastener, canonical, env.cabinet, env.now, inUse);
  const { verdict, sentence } = explain(
    state,
    want.ask,
    want.fastener,
    read,
    interval,
    tool?.expandedUncertainty,
  );
  const earlier = standingReading(state.job, step.id, want);
  const label = `${wantLabel(state.job, want)}${inUse === undefined ? '' : ', on the wrench'}`;
  if (earlier !== undefined && isSame(earlier, read) && state.question === undefined)
    return show(state, via, {
      tone: 'plain',
      text: `${label}: ${spokenFigure(intent.value, unit)} is already in`,
    });
  const next = passedOver(state, want);
  const draft: Draft = {
    step: step.id,
    ask: want.ask.id,
    ...(want.fastener === undefined ? {} : { fastener: want.fastener }),
    label,
    value: intent.value,
    unit,
    interval,
    verdict,
    sentence,
    ...(tool === undefined ? {} : { tool }),
    ...withAdapter(inUse?.adapter),
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
    ...contradiction(state, earlier, read),
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
