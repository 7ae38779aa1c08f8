import { describe, expect, test } from 'vitest';
import { looseEnds, type LooseEnd } from '@/lib/ledger';
import type { Revision } from '@/lib/procedure';
import { Bay } from '../job/driver';
import { doAllOpen, doSteps } from '../job/hands';
import { hatchJob, lidJob } from '../job/lid-procedure';

const why = { text: 'no time' };
const of = (bay: Bay, ...kinds: readonly LooseEnd['kind'][]) =>
  looseEnds(bay.state)
    .filter(({ kind }) => kinds.includes(kind))
    .map(({ text, detail }) => (detail === undefined ? text : `${text} (${detail})`));

describe('a fluid', () => {
  const oil = (drainedL: number, filledL: number): Bay => {
    const bay = new Bay(lidJob);
    bay.does({ type: 'readingTaken', step: 'drain', ask: 'drained', value: drainedL, unit: 'L' });
    bay.does({ type: 'stepDone', step: 'drain' });
    doSteps(bay, 'open-lid', 'open-hub', 'press-seal', 'close-lid', 'snug-lid', 'tighten-lid');
    bay.begin('fill');
    bay.does({ type: 'readingTaken', step: 'fill', ask: 'filled', value: filledL, unit: 'L' });
    bay.does({ type: 'stepDone', step: 'fill' });
    return bay;
  };

  test('that is out is named with its volume', () => {
    const bay = new Bay(lidJob);
    bay.does({ type: 'readingTaken', step: 'drain', ask: 'drained', value: 2850, unit: 'mL' });
    bay.does({ type: 'stepDone', step: 'drain' });
    expect(of(bay, 'fluidOut')).toEqual(['Oil is out (Drained 2.85 L, capacity 3 L)']);
  });

  test('balances up to the tolerance, the limit included', () => {
    expect(of(oil(3, 3.2), 'fluidUnbalanced')).toEqual([]);
    expect(of(oil(3, 2.8), 'fluidUnbalanced')).toEqual([]);
  });

  test('that does not balance says with what', () => {
    expect(of(oil(2.7, 3), 'fluidUnbalanced')).toEqual([
      'Oil does not balance (3 L went in and 2.7 L came out: they differ by 0.3 L, 0.2 L is allowed. ' +
        'It came in low, or a volume was misread.)',
    ]);
    expect(of(oil(3.3, 3.25), 'fluidUnbalanced')).toEqual([
      'Oil is overfilled (3.25 L went in; 2.8 L to 3.2 L is due: 0.05 L too much.)',
    ]);
    expect(of(oil(2.8, 2.7), 'fluidUnbalanced')).toEqual([
      'Oil is underfilled (2.7 L went in; 2.8 L to 3.2 L is due: 0.1 L too little.)',
    ]);
    expect(of(oil(3, 3.3), 'fluidUnbalanced')).toEqual([
      'Oil is overfilled and does not balance (3.3 L went in; 2.8 L to 3.2 L is due: 0.1 L too much. ' +
        '3.3 L went in and 3 L came out: they differ by 0.3 L, 0.2 L is allowed. ' +
        'It came in low, or a volume was misread.)',
    ]);
  });

  test('that was filled up without being drained need not balance', () => {
    const steps = lidJob.steps.map((one) =>
      one.id === 'drain' ? { ...one, effects: [], asks: [] } : one,
    );
    const bay = new Bay({ ...lidJob, steps });
    doAllOpen(bay);
    expect(of(bay, 'fluidOut', 'fluidUnbalanced')).toEqual([]);
    expect(bay.state.fluids['oil']?.state).toBe('refilled');
  });
});

describe('a fastener on its way', () => {
  test('is run in, then snug, then final', () => {
    const bay = new Bay(lidJob);
    const second = () => of(bay, 'fastenerOpen').filter((text) => text.startsWith('Lid bolt 2'));
    doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal', 'close-lid');
    expect(second()).toEqual(['Lid bolt 2 is run in by hand (hole 2, 25 mm)']);
    doSteps(bay, 'snug-lid');
    expect(second()).toEqual(['Lid bolt 2 is snug, not final (hole 2, 25 mm)']);
    doSteps(bay, 'tighten-lid');
    expect(second()).toEqual([]);
    expect(of(bay, 'fastenerOpen')).toContain('Idler nut is loose (hole 1, 12 mm)');
  });

  test('cannot be tightened while it is off', () => {
    const bay = new Bay(lidJob);
    doSteps(bay, 'drain', 'open-lid');
    bay.begin('snug-lid');
    bay.does({ type: 'deviationNoted', kind: 'orderChanged', step: 'snug-lid', reason: why });
    bay.does({ type: 'stepDone', step: 'snug-lid' });
    expect(bay.state.fasteners['lid-1']?.stage).toBe('off');
  });
});

describe('a step left out', () => {
  test('leaves its readings and checks missing, and what it would have settled open', () => {
    const bay = new Bay(lidJob);
    doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal', 'close-lid', 'snug-lid');
    bay.does({ type: 'stepLeftOut', step: 'tighten-lid', reason: why });
    bay.does({ type: 'stepLeftOut', step: 'run', reason: why });
    expect(of(bay, 'readingMissing', 'checkMissing')).toEqual([
      'Lid bolt 1, torque: no reading (Asked: 9 to 11 N·m)',
      'Lid bolt 2, torque: no reading (Asked: 9 to 11 N·m)',
      'Lid bolt 3, torque: no reading (Asked: 9 to 11 N·m)',
      'No leak: not made',
    ]);
    expect(of(bay, 'fastenerOpen')).toContain('Lid bolt 1 is snug, not final (hole 1, 20 mm)');
    expect(of(bay, 'deviationUndecided')).toEqual([
      'Left out, at step 7, Tighten the lid bolts: undecided (no time)',
      'Left out, at step 12, Run it and look for leaks: undecided (no time)',
    ]);
  });
});

describe('what was entered before its step was left out', () => {
  test('does not count', () => {
    const bay = new Bay(lidJob);
    bay.does({ type: 'readingTaken', step: 'drain', ask: 'drained', value: 3, unit: 'L' });
    bay.does({ type: 'stepLeftOut', step: 'drain', reason: why });
    expect(bay.state.readings.map(({ status }) => status)).toEqual(['superseded']);
    expect(bay.state.fluids['oil']).toEqual({ state: 'in' });
    expect(of(bay, 'readingMissing')).toEqual([
      'Oil drained: no reading (The sheet gives no figure)',
    ]);
  });
});

describe('a check', () => {
  test('that failed lets the step be done and stays until it passes', () => {
    const bay = new Bay(hatchJob);
    const look = (passed: boolean): void => {
      bay.begin('look');
      bay.does({
        type: 'answerGiven',
        step: 'look',
        ask: 'sound',
        answer: { kind: 'check', passed },
      });
      bay.does({ type: 'stepDone', step: 'look' });
    };
    look(false);
    expect(of(bay, 'checkFailed')).toEqual(['No damage: failed (Passes when: Nothing is bent)']);
    bay.does({ type: 'stepReopened', step: 'look', reason: why });
    look(true);
    expect(of(bay, 'checkFailed')).toEqual([]);
  });

  test('by counting fails when the count is another', () => {
    const bay = new Bay(lidJob);
    doSteps(bay, 'drain');
    bay.begin('open-lid');
    bay.does({
      type: 'answerGiven',
      step: 'open-lid',
      ask: 'laid',
      answer: { kind: 'count', count: 2 },
    });
    bay.does({ type: 'stepDone', step: 'open-lid' });
    expect(of(bay, 'checkFailed')).toEqual(['Bolts laid out: 2 counted, 3 expected']);
  });
});

describe('a final pass with a figure', () => {
  /** The hatch is tightened in one step and read, if at all, in another. */
  const apart = (asks: boolean): Revision => {
    const close = hatchJob.steps[2];
    if (close === undefined) throw new Error('the example has changed');
    const read = { ...close, id: 'read', title: 'Read the torque', after: ['close'], effects: [] };
    return {
      ...hatchJob,
      steps: [...hatchJob.steps.slice(0, 2), { ...close, asks: [] }, ...(asks ? [read] : [])],
    };
  };

  test('lacks its reading from when it is tightened until it is read', () => {
    const bay = new Bay(apart(true));
    doSteps(bay, 'look', 'open');
    expect(of(bay, 'readingMissing')).toEqual([]);
    doSteps(bay, 'close');
    expect(of(bay, 'readingMissing')).toEqual([
      'Hatch bolt torque: no reading (Asked: 9 to 11 N·m)',
    ]);
    doSteps(bay, 'read');
    expect(of(bay, 'readingMissing')).toEqual([]);
  });

  test('lacks it for good where no step asks', () => {
    const bay = new Bay(apart(false));
    doSteps(bay, 'look', 'open', 'close');
    expect(looseEnds(bay.state).map(({ text }) => text)).toEqual(['Hatch, torque: no reading']);
  });
});

describe('a kit item declared left over', () => {
  test('is no longer left over once it is used after all', () => {
    const bay = new Bay(lidJob);
    bay.does({ type: 'kitLeftOver', kitItem: 'lamp-set', count: 1, reason: why });
    doSteps(bay, 'lamp');
    expect(bay.state.kit['lamp-set']).toEqual({ used: 1, leftOver: 0, extra: 0 });
    expect(of(bay, 'kitUnaccounted')).not.toContain('Lamp: 1 of 1 not accounted for');
  });
});

describe('a deviation told by sound alone', () => {
  test('is shown as a spoken note', () => {
    const bay = new Bay(hatchJob);
    bay.does({
      type: 'deviationNoted',
      kind: 'missingOrDamaged',
      step: 'open',
      reason: { clip: '00000000-0000-4000-8000-0000000000cc' },
      part: 'hatch',
      fastener: 'lid-1',
    });
    expect(of(bay, 'deviationUndecided')).toEqual([
      'Missing or damaged, Hatch bolt 1, Hatch, at step 2, Take off the hatch: undecided (Spoken note)',
    ]);
  });
});
