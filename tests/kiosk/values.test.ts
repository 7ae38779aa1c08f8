import { describe, expect, test } from 'vitest';
import { Driver } from './driver';

const readings = (d: Driver) =>
  d.state.job.readings.map(({ fastener, value, unit, status }) => ({
    fastener,
    value,
    unit,
    status,
  }));

describe('a spoken value', () => {
  test('in spec is stored at once, shown large with its verdict, and does not yet count', () => {
    const d = new Driver().toTighten().value(10.2);
    expect(d.state.question).toBeUndefined();
    expect(d.state.outcome?.figure).toEqual({
      value: 10.2,
      unit: 'N.m',
      label: 'Cover bolt 1',
      verdict: 'inSpec',
      sentence: '10.2 N·m is within 9–11 N·m.',
    });
    expect(readings(d).at(-1)).toEqual({
      fastener: 'cover-1',
      value: 10.2,
      unit: 'N.m',
      status: 'provisional',
    });
  });

  test('counts once the mechanic goes on', () => {
    const d = new Driver().toTighten().value(10.2).value(9.8).next();
    expect(
      readings(d)
        .slice(-2)
        .map((r) => r.status),
    ).toEqual(['counted', 'counted']);
    expect(d.step).toBe('fill');
  });

  test('goes to the bolt that was named', () => {
    const d = new Driver().toTighten().value(10, { label: '1' }).value(9.5, { label: '2' });
    expect(readings(d).at(-1)).toMatchObject({ fastener: 'cover-2', value: 9.5 });
  });

  test('for a bolt before its turn is asked back, and on yes the changed order is noted', () => {
    const d = new Driver().toTighten().value(10, { label: '2' });
    expect(d.text).toContain('Cover bolt 1 comes first in the order');
    d.yes();
    expect(readings(d).at(-1)?.fastener).toBe('cover-2');
    expect(d.state.job.deviations).toMatchObject([
      { kind: 'orderChanged', reason: { text: 'Cover bolt 2 was tightened before Cover bolt 1' } },
    ]);
    d.value(10);
    expect(d.state.job.deviations).toHaveLength(1);
  });

  test('for a bolt that is not there is refused and says so', () => {
    const d = new Driver().toTighten();
    const before = d.stored.length;
    d.value(10, { label: '7' });
    expect(d.text).toContain('There is no 7');
    expect(d.stored).toHaveLength(before);
  });

  test.each([
    ['heard with doubt', { value: 10 }, 'unsure', 'not heard well'],
    ['out of spec', { value: 12 }, 'sure', 'out of spec'],
    ['over three times the target', { value: 31 }, 'sure', 'far from the target'],
    ['under a third of the target', { value: 3 }, 'sure', 'far from the target'],
    [
      "in another unit than the step's",
      { value: 7.4, unit: '[lbf_av].[ft_i]' },
      'sure',
      'said in lbf·ft',
    ],
  ] as const)('%s is asked back before anything is stored', (_name, intent, certainty, why) => {
    const d = new Driver().toTighten();
    const before = d.stored.length;
    d.say({ kind: 'value', ...intent }, certainty);
    expect(d.state.question?.kind).toBe('value');
    expect(d.text).toContain(why);
    expect(d.stored).toHaveLength(before);
    d.yes();
    expect(d.stored.slice(before)).toEqual(['readingTaken']);
  });

  test('asked back and denied leaves nothing behind', () => {
    const d = new Driver().toTighten();
    const before = d.stored.length;
    d.value(12).no();
    expect(d.stored).toHaveLength(before);
    expect(d.state.question).toBeUndefined();
  });

  test('that contradicts an earlier one for the same bolt is asked back, and on yes replaces it', () => {
    const d = new Driver().toTighten().value(10.2, { label: '1' }).value(9.4, { label: '1' });
    expect(d.text).toContain('10.2 N·m was given before');
    d.yes();
    expect(readings(d).slice(-2)).toEqual([
      { fastener: 'cover-1', value: 10.2, unit: 'N.m', status: 'withdrawn' },
      { fastener: 'cover-1', value: 9.4, unit: 'N.m', status: 'provisional' },
    ]);
  });

  test('said again the same is not stored twice', () => {
    const d = new Driver().toTighten().value(10, { label: '1' });
    const before = d.stored.length;
    d.value(10, { label: '1' });
    expect(d.stored).toHaveLength(before);
  });

  test('said differently while a value is asked back is asked back again, never taken for a yes', () => {
    const d = new Driver().toTighten().value(12).value(10);
    expect(d.state.question).toMatchObject({ kind: 'value', draft: { value: 10 } });
    expect(d.text).toContain('12 N·m was given before');
  });

  test('with several readings asks for it digit by digit and keeps the bolt that was named', () => {
    const d = new Driver()
      .toTighten()
      .say({ kind: 'ambiguousValue', candidates: [10, 9.1], label: '2' });
    expect(d.state.question?.kind).toBe('whichValue');
    d.value(10).yes();
    expect(readings(d).at(-1)).toMatchObject({ fastener: 'cover-2', value: 10 });
  });

  test('in a unit of another quantity is refused', () => {
    const d = new Driver().toTighten().value(10, { unit: 'L' });
    expect(d.text).toContain('Nothing here is measured in L');
  });

  test('is taken back by voice after a yes, and the event stays', () => {
    const d = new Driver().toTighten().value(10.2).say({ kind: 'takeBack' });
    expect(d.text).toBe('Take back Cover bolt 1, 10.2 N·m?');
    d.yes();
    expect(readings(d).at(-1)?.status).toBe('withdrawn');
    expect(d.stored.slice(-2)).toEqual(['readingTaken', 'entryWithdrawn']);
  });

  test('never changes the step by itself', () => {
    const d = new Driver().toTighten().value(10).value(10, { label: '2' });
    expect(d.step).toBe('tighten');
  });
});

describe('a count', () => {
  test('that is right is stored', () => {
    const d = new Driver().value(3.9).next().value(2);
    expect(d.stored.at(-1)).toBe('answerGiven');
  });
  test('that is wrong is asked back', () => {
    const d = new Driver().value(3.9).next().value(3);
    expect(d.text).toBe('Bolts in tray A: 3, 2 expected?');
  });
});
