import { judgeNut } from '../fastening/prevailing';
import { toleranceInterval } from '../fastening/specification';
import { explainVerdict, type Explanation } from '../metrology/explain';
import { judge, type Verdict } from '../metrology/verdict';
import { askOf, groupOf, passOf, stepOf, type ValueAsk } from '../procedure';
import { roundDecimal, toCanonical, type Measured } from '../quantity';
import { decisionRuleFor, askSpecification } from './asks';
import { askedValue, type Prevailing } from './asked-value';
import { atFastener, type ReadValue } from './at-fastener';
import type { JobState, Reading } from './state';

/**
 * The torque that seats a nut is what was read less what it took to turn: both uncertainties count, as roots of
 * squares (JCGM 100 §5.1.2). That one wrench may be off the same way in both is not taken off.
 */
const withNut = (torque: number | undefined, nut: Prevailing | undefined): number | undefined => {
  if (nut?.kind !== 'added') return torque;
  const there = atFastener(nut.reading, nut.reading.tool?.expandedUncertainty);
  const turning = there.ok ? there.value.expandedUncertainty : undefined;
  return torque === undefined || turning === undefined ? undefined : Math.hypot(torque, turning);
};

/** While it is not known what the nut adds, only what is out of spec for any nut that is allowed can be told. */
const withoutNut = (job: JobState, ask: ValueAsk, canonical: number): Verdict => {
  const { lower, upper } = toleranceInterval(askSpecification(job.revision, ask)) ?? {};
  const group = ask.of.kind === 'pass' ? groupOf(job.revision, ask.of.group) : undefined;
  const allowed =
    group && ask.of.kind === 'pass' ? passOf(group, ask.of.pass)?.prevailing : undefined;
  const most = allowed && toleranceInterval(allowed)?.upper;
  const widest = {
    ...(lower === undefined ? {} : { lower }),
    ...(upper === undefined || most === undefined ? {} : { upper: upper + most }),
  };
  return judge(canonical, widest, undefined, 'simple') === 'outOfSpec'
    ? 'outOfSpec'
    : 'notProvable';
};

/** A computed figure with no more decimals than the verdict on it needs: 79.9997 is 80, unless 80 is the limit. */
const readable = (
  { value, unit }: Measured,
  verdictOn: (canonical: number) => Verdict,
): Measured => {
  const verdict = verdictOn(toCanonical(value, unit));
  const rounded = [1, 2, 3]
    .map((places) => roundDecimal(value, places))
    .find((short) => verdictOn(toCanonical(short, unit)) === verdict);
  return { value: rounded ?? value, unit };
};

/**
 * The verdict on a value for an ask of this job, and why. With an adapter what the fastener got is judged. `expandedUncertainty`
 * (k = 2) is that of the tool at this value, in the canonical unit, where it is known.
 */
export const judgeValue = (
  job: JobState,
  ask: ValueAsk,
  fastener: string | undefined,
  reading: ReadValue,
  expandedUncertainty: number | undefined,
): Explanation => {
  const { specification, prevailing } = askedValue(job, ask, fastener);
  const there = atFastener(reading, expandedUncertainty);
  if (!there.ok) return { verdict: 'notProvable', sentence: there.error.message };
  const { canonical, measured } = there.value;
  const interval = toleranceInterval(specification);
  const expanded = withNut(there.value.expandedUncertainty, prevailing);
  const rule = decisionRuleFor(job.revision, ask);
  const explained = (of: Measured): Explanation => explainVerdict(of, interval, expanded, rule);
  const told =
    reading.adapter === undefined
      ? explained(measured)
      : inFront(
          'At the fastener',
          explained(readable(measured, (value) => judge(value, interval, expanded, rule))),
        );
  switch (prevailing?.kind) {
    case 'added':
      return { ...told, sentence: `${told.sentence.replace(/\.$/, '')}; ${prevailing.explain}.` };
    case 'open':
    case 'unfit':
      return { verdict: withoutNut(job, ask, canonical), sentence: prevailing.explain };
    case undefined: {
      const nut =
        ask.of.kind === 'pass' && ask.of.measure === 'prevailing' && told.verdict === 'outOfSpec'
          ? judgeNut(specification, canonical, reading.unit)
          : undefined;
      return nut === undefined ? told : { ...told, sentence: nut.message };
    }
  }
};

const inFront = (where: string, told: Explanation): Explanation => ({
  ...told,
  sentence: /^\d/.test(told.sentence) ? `${where} ${told.sentence}` : told.sentence,
});

const judgedAgain = (job: JobState, reading: Reading): Reading => {
  const step = stepOf(job.revision, reading.step);
  const ask = step && askOf(step, reading.ask);
  if (reading.status !== 'provisional' || ask?.kind !== 'value') return reading;
  const { verdict } = judgeValue(
    job,
    ask,
    reading.fastener,
    reading,
    reading.tool?.expandedUncertainty,
  );
  return verdict === reading.verdict ? reading : { ...reading, verdict };
};

/** What does not count yet is judged anew: what a nut takes to turn may have been measured since, or taken back. */
export const withVerdictsInForce = (job: JobState): JobState =>
  job.revision.groups.some(({ passes }) =>
    passes.some(({ prevailing }) => prevailing !== undefined),
  )
    ? { ...job, readings: job.readings.map((reading) => judgedAgain(job, reading)) }
    : job;
