import { describe, expect, test } from 'vitest';
import {
  enoughForCapability,
  enoughForFit,
  hearingSection,
  holdReasons,
  jointSection,
  reworkSteps,
  stepTimesOf,
  transcriptOf,
  type StoredReading,
} from '@/lib/review';

const joint = { procedure: 'lid', ask: 'torque', fastener: 'lid-3', name: 'Lid bolt 3: torque' };

const reading = (value: number, at: number, more: Partial<StoredReading> = {}): StoredReading => ({
  job: 'a',
  seq: at,
  at: new Date(at * 3_600_000).toISOString(),
  revision: 1,
  value,
  lower: 9,
  upper: 11,
  target: 10,
  verdict: 'inSpec',
  ...more,
});

/** To and fro around ten, so that no rule speaks. */
const calm = (points: number): readonly StoredReading[] =>
  Array.from({ length: points }, (_, at) =>
    reading(10 + ([0.1, -0.1, 0.2, -0.2, 0, 0.1, -0.2][at % 7] ?? 0), at),
  );

describe('the chart of a joint', () => {
  test('is in the unit of the sheet: 120 inch pounds are 13.558 N·m (1 lbf·in = 0.112985 N·m, NIST SP 811)', () => {
    const section = jointSection(joint, '[lbf_av].[in_i]', [
      reading(13.558, 1, { lower: 12.4283, upper: 14.688, target: 13.558 }),
    ]);
    expect(section.points[0]?.value).toBeCloseTo(120, 1);
    expect(section.limits?.lower).toBeCloseTo(110, 1);
    expect(section.limits?.upper).toBeCloseTo(130, 1);
  });

  // NIST/SEMATECH e-Handbook 6.3.2.2, ten flow rates: centre 50.81, limits 45.8159 and 55.8041 (from memory).
  test('has the limits of the handbook’s example of individuals', () => {
    const values = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
    const section = jointSection(
      joint,
      'N.m',
      values.map((value, at) => reading(value, at)),
    );
    expect(section.chart?.centre).toBeCloseTo(50.81, 2);
    expect(section.chart?.averageMovingRange).toBeCloseTo(1.8778, 3);
    expect(section.chart?.upper).toBeCloseTo(55.8041, 2);
    expect(section.chart?.lower).toBeCloseTo(45.8159, 2);
    expect(section.chart?.preliminary).toBe(true);
  });

  test('one value has no limits, no moving range and no capability', () => {
    const section = jointSection(joint, 'N.m', [reading(10, 1)]);
    expect(section.chart).toBeUndefined();
    expect(section.points[0]).not.toHaveProperty('movingRange');
    expect(section.capability).toEqual({ kind: 'tooFew', points: 1, needs: enoughForCapability });
  });

  test('a point far out completes a rule, which is told with it, and voids the capability', () => {
    const readings = [...calm(40), reading(12, 40)];
    const section = jointSection(joint, 'N.m', readings);
    expect(section.points.at(-1)?.rules).toContain('beyondThree');
    expect(section.capability.kind).toBe('unstable');
  });

  test('enough calm values have a capability: mean to the nearer limit over three standard deviations', () => {
    const section = jointSection(joint, 'N.m', calm(70));
    expect(section.signals).toEqual([]);
    if (section.capability.kind !== 'capable') throw new Error(section.capability.kind);
    const values = section.points.map(({ value }) => value);
    const mean = values.reduce((a, b) => a + b, 0) / values.length;
    const s = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (values.length - 1));
    expect(section.capability.capability.cpk.value).toBeCloseTo(
      Math.min(mean - 9, 11 - mean) / (3 * s),
      9,
    );
  });

  test.each([
    ['too few', calm(enoughForCapability - 1), 'tooFew'],
    ['no figure', calm(40).map(({ lower: _, upper: __, ...one }) => one), 'noLimits'],
    [
      'another limit in an older revision',
      [reading(10, 0, { upper: 12 }), ...calm(40)],
      'limitsDiffer',
    ],
    ['no spread', Array.from({ length: 40 }, (_, at) => reading(10, at)), 'noSpread'],
  ] as const)('%s: no capability', (_, readings, kind) => {
    expect(jointSection(joint, 'N.m', readings).capability.kind).toBe(kind);
  });
});

describe('the times of a step', () => {
  const step = { step: 'a', stepNumber: 1, stepTitle: 'A', bookMinutes: 4 };

  test('quantiles are those of type 7: of 1, 2, 3, 4 the lower quartile is 1.75 (Hyndman and Fan 1996)', () => {
    const times = stepTimesOf(step, [4, 1, 3, 2]);
    expect(times.quantiles).toMatchObject({ p25: 1.75, p50: 2.5, p75: 3.25 });
    expect(times.runs).toBe(4);
  });

  test('over the book is what took longer, and every run has a place beside the book time', () => {
    const times = stepTimesOf(step, [4, 4.1, 8, 30, 0]);
    expect(times.overBook).toBe(0.6);
    expect(times.histogram).toEqual([1, 0, 0, 0, 2, 0, 0, 1, 0, 1]);
  });

  test('a curve is drawn only for enough runs, and finds the lognormal again', () => {
    expect(stepTimesOf(step, Array(enoughForFit - 1).fill(4) as number[])).not.toHaveProperty(
      'lognormal',
    );
    // Logarithms -1 and 1 around ln 4, as often: mu = ln 4, sigma just above 1.
    const minutes = Array.from({ length: 400 }, (_, at) => 4 * Math.exp(at % 2 === 0 ? 1 : -1));
    const { lognormal } = stepTimesOf(step, minutes);
    expect(lognormal?.p50).toBeCloseTo(4, 9);
    expect(lognormal?.p95).toBeCloseTo(4 * Math.exp(1.6449 * Math.sqrt(400 / 399)), 2);
  });

  test('without a run there is nothing to tell', () => {
    expect(stepTimesOf(step, [])).toEqual({
      ...step,
      runs: 0,
      overBook: 0,
      histogram: Array(10).fill(0),
    });
  });
});

describe('phrases', () => {
  const none = { heard: 0, askedBack: 0, declined: 0, takenBack: 0, saidAgain: 0 };

  test('what fails surely comes before what failed once in two', () => {
    const { phrases, heard } = hearingSection([
      { ...none, phrase: 'ready', heard: 2, saidAgain: 1 },
      { ...none, phrase: 'no', heard: 200, declined: 20, saidAgain: 60 },
      { ...none, phrase: 'next', heard: 800 },
    ]);
    expect(heard).toBe(1002);
    expect(phrases.map(({ phrase }) => phrase)).toEqual(['no', 'ready', 'next']);
    expect(phrases[0]?.troubled.share).toBe(0.4);
  });

  test('more taken back than heard in the time asked for is no more than all', () => {
    const { phrases } = hearingSection([{ ...none, phrase: 'no', heard: 1, takenBack: 3 }]);
    expect(phrases[0]?.troubled.share).toBe(1);
  });
});

describe('holds', () => {
  test('are counted by their reason however it is spelt, and what lasts has no time yet', () => {
    expect(
      holdReasons([
        { reason: 'Waiting for parts', minutes: 30 },
        { reason: 'waiting  for Parts', minutes: 90 },
        { reason: 'Waiting for parts' },
        { reason: 'Break', minutes: 15 },
      ]),
    ).toEqual([
      {
        reason: 'Waiting for parts',
        count: 3,
        running: 1,
        totalMinutes: 120,
        medianMinutes: 60,
        longestMinutes: 90,
      },
      {
        reason: 'Break',
        count: 1,
        running: 0,
        totalMinutes: 15,
        medianMinutes: 15,
        longestMinutes: 15,
      },
    ]);
  });

  test('reasons beyond the first dozen stand together, as does sound without words', () => {
    const many = Array.from({ length: 20 }, (_, n) => ({ reason: `reason ${n}`, minutes: 1 }));
    const rows = holdReasons([...many, ...many.slice(0, 12), { reason: '', minutes: 5 }]);
    expect(rows).toHaveLength(13);
    expect(rows.find(({ reason }) => reason === '')).toMatchObject({ count: 9, totalMinutes: 13 });
  });
});

test('reworks are counted by step, jobs once each', () => {
  const one = {
    procedure: 'lid',
    step: 'seal',
    job: 'a',
    followed: 'doneAgain',
    minutes: 4,
  } as const;
  expect(
    reworkSteps([
      one,
      { ...one, followed: 'reopenedAgain', minutes: 8 },
      { procedure: 'lid', step: 'seal', job: 'b', followed: 'stillOpen' },
      { ...one, step: 'bolt' },
    ]),
  ).toEqual([
    {
      procedure: 'lid',
      step: 'seal',
      times: 3,
      jobs: 2,
      followed: { doneAgain: 1, leftOut: 0, reopenedAgain: 1, stillOpen: 1 },
      medianMinutes: 6,
    },
    {
      procedure: 'lid',
      step: 'bolt',
      times: 1,
      jobs: 1,
      followed: { doneAgain: 1, leftOut: 0, reopenedAgain: 0, stillOpen: 0 },
      medianMinutes: 4,
    },
  ]);
});

test('the words of a dictation that were not sure are marked, and where nobody knows they are not', () => {
  const words = { text: 'bent the bracket', spoken: true, confidence: 0.4 };
  expect(transcriptOf({ ...words, unsure: [2] })).toEqual({
    words: [
      { text: 'bent', sure: true },
      { text: 'the', sure: true },
      { text: 'bracket', sure: false },
    ],
    spoken: true,
    confidence: 0.4,
  });
  expect(transcriptOf(words)?.words).toEqual([
    { text: 'bent' },
    { text: 'the' },
    { text: 'bracket' },
  ]);
  expect(transcriptOf({ spoken: true })).toBeUndefined();
});
