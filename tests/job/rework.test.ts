import { describe, expect, test } from 'vitest';
import { dependents } from '@/lib/job';
import { looseEnds } from '@/lib/ledger';
import { Bay } from './driver';
import { doStep, doSteps } from './hands';
import { lidJob } from './lid-procedure';

const why = { text: 'seal leaks' };
const reopen = (bay: Bay, step: string): void => {
  bay.does({ type: 'stepReopened', step, reason: why });
};
const statuses = (bay: Bay): readonly string[] =>
  Object.entries(bay.state.steps)
    .filter(([, { status }]) => status === 'done')
    .map(([id]) => id);

const allDone = (): Bay => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal', 'close-lid', 'snug-lid');
  doSteps(bay, 'tighten-lid', 'close-hub', 'tighten-hub', 'fill', 'lamp', 'run');
  return bay;
};

describe('reopening a step', () => {
  test('reopens what follows from it, and nothing else', () => {
    expect(dependents(lidJob, 'close-hub')).toEqual(['tighten-hub', 'run']);
    const bay = allDone();
    reopen(bay, 'close-hub');
    expect(statuses(bay)).toEqual([
      'drain',
      'open-lid',
      'open-hub',
      'press-seal',
      'close-lid',
      'snug-lid',
      'tighten-lid',
      'fill',
      'lamp',
    ]);
    expect(bay.state.steps['run']).toMatchObject({ status: 'open', ready: false, reopened: 1 });
  });

  test('takes off again what was fitted, and wants a new part where it may be used once only', () => {
    const bay = allDone();
    reopen(bay, 'press-seal');
    expect(bay.state.parts['seal']).toEqual({ where: 'off', replacementDue: true });
    expect(bay.state.parts['lid']).toEqual({ where: 'off', replacementDue: false });
    expect(bay.state.parts['gasket']).toEqual({ where: 'off', replacementDue: false });
    expect(bay.state.parts['washer']).toEqual({ where: 'off', replacementDue: true });
    expect(bay.state.parts['lamp']).toMatchObject({ where: 'on', fitted: 'new' });
  });

  test('leaves bolts that were only tightened loose, and bolts that were run in off', () => {
    const bay = allDone();
    reopen(bay, 'snug-lid');
    expect(bay.state.fasteners['lid-1']?.stage).toBe('loose');
    reopen(bay, 'close-lid');
    expect(bay.state.fasteners['lid-1']?.stage).toBe('off');
    expect(bay.state.fasteners['hub-1']?.stage).toBe('final');
  });

  test('makes thread-locker and single-use bolts due again, and only their own step settles that', () => {
    const bay = allDone();
    reopen(bay, 'tighten-hub');
    const hub = () => bay.state.fasteners['hub-1'];
    expect(hub()).toEqual({ stage: 'loose', threadLockerDue: true, replacementDue: true });
    doSteps(bay, 'tighten-hub', 'run');
    expect(
      looseEnds(bay.state)
        .filter(({ kind }) => kind === 'threadLockerDue' || kind === 'replacementDue')
        .map(({ text, step }) => ({ text, step })),
    ).toEqual([
      { text: 'Hub bolt: thread-locker is due', step: 'close-hub' },
      { text: 'Idler nut: thread-locker is due', step: 'close-hub' },
      { text: 'Hub bolt: a new one is due', step: 'close-hub' },
    ]);
    reopen(bay, 'close-hub');
    doSteps(bay, 'close-hub', 'tighten-hub', 'run');
    expect(hub()).toEqual({ stage: 'final', threadLockerDue: false, replacementDue: false });
  });

  test('makes thread-locker due again that was applied and not yet tightened', () => {
    const bay = new Bay(lidJob);
    doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal', 'close-hub');
    expect(bay.state.fasteners['idler-1']).toMatchObject({
      stage: 'loose',
      threadLockerDue: false,
    });
    reopen(bay, 'close-hub');
    expect(bay.state.fasteners['idler-1']).toMatchObject({ stage: 'loose', threadLockerDue: true });
  });

  test('lets a filled fluid be out again, with its volume to be read again', () => {
    const bay = allDone();
    expect(bay.state.fluids['oil']).toEqual({ state: 'refilled', drainedL: 3, filledL: 3 });
    reopen(bay, 'tighten-lid');
    expect(bay.state.fluids['oil']).toEqual({ state: 'out', drainedL: 3 });
  });

  test('leaves what was drained and taken off as it lies', () => {
    const bay = new Bay(lidJob);
    doSteps(bay, 'drain', 'open-lid');
    reopen(bay, 'drain');
    expect(bay.state.fluids['oil']).toEqual({ state: 'out' });
    expect(bay.state.parts['lid']).toMatchObject({ where: 'off', tray: 'A' });
    expect(bay.state.fasteners['lid-2']).toMatchObject({
      stage: 'off',
      lies: { tray: 'A', place: '2' },
    });
    expect(statuses(bay)).toEqual([]);
  });

  test('keeps earlier readings and answers, superseded', () => {
    const bay = allDone();
    reopen(bay, 'tighten-lid');
    doStep(bay, 'tighten-lid');
    expect(
      bay.state.readings
        .filter(({ ask }) => ask === 'lid-torque')
        .map(({ fastener, status }) => `${fastener ?? ''} ${status}`),
    ).toEqual([
      'lid-1 superseded',
      'lid-2 superseded',
      'lid-3 superseded',
      'lid-1 counted',
      'lid-2 counted',
      'lid-3 counted',
    ]);
  });

  test('keeps a spent piece of the kit spent; the next one comes from elsewhere', () => {
    const bay = allDone();
    reopen(bay, 'press-seal');
    expect(bay.state.kit['new-seal']).toEqual({ used: 1, leftOver: 0, extra: 0 });
    doStep(bay, 'press-seal');
    expect(bay.state.kit['new-seal']).toEqual({ used: 1, leftOver: 0, extra: 1 });
  });

  test('gives back to the kit what goes on again', () => {
    const bay = allDone();
    reopen(bay, 'lamp');
    expect(bay.state.kit['lamp-set']).toEqual({ used: 0, leftOver: 0, extra: 0 });
    doStep(bay, 'lamp');
    expect(bay.state.kit['lamp-set']).toEqual({ used: 1, leftOver: 0, extra: 0 });
    expect(bay.state.kit['cable-tie']).toEqual({ used: 2, leftOver: 0, extra: 0 });
  });

  test('of a step that was left out just opens it', () => {
    const bay = new Bay(lidJob);
    bay.does({ type: 'stepLeftOut', step: 'lamp', reason: why });
    reopen(bay, 'lamp');
    expect(bay.state.parts['lamp']).toEqual({ where: 'off', replacementDue: false });
    expect(bay.state.kit['lamp-set']).toEqual({ used: 0, leftOver: 0, extra: 0 });
    expect(bay.state.deviations.map(({ kind }) => kind)).toEqual(['leftOut', 'rework']);
  });

  test('wants a changed order explained anew', () => {
    const bay = new Bay(lidJob);
    const explain = () =>
      bay.does({ type: 'deviationNoted', kind: 'orderChanged', step: 'open-hub', reason: why });
    bay.begin('open-hub');
    explain();
    bay.does({ type: 'stepDone', step: 'open-hub' });
    reopen(bay, 'open-hub');
    expect(bay.refused({ type: 'stepDone', step: 'open-hub' })).toBe('prerequisiteOpen');
    explain();
    expect(bay.refused({ type: 'stepDone', step: 'open-hub' })).toBe('accepted');
  });
});

describe('a single-use bolt', () => {
  test('run in again the same stays due for a new one', () => {
    const steps = lidJob.steps.map((one) => ({
      ...one,
      effects: one.effects.map((effect) =>
        effect.kind === 'runsIn' ? { ...effect, fasteners: 'same' as const } : effect,
      ),
    }));
    const bay = new Bay({ ...lidJob, steps });
    doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal', 'close-hub', 'tighten-hub');
    expect(bay.state.fasteners['hub-1']).toEqual({
      stage: 'final',
      threadLockerDue: false,
      replacementDue: true,
    });
    expect(bay.state.fasteners['lid-1']?.replacementDue).toBe(false);
  });
});

describe('a part used again', () => {
  const closeLid = (bay: Bay, gasket: 'reused' | 'replaced', washer: 'reused' | 'replaced') => {
    doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal');
    bay.begin('close-lid');
    const answer = { type: 'answerGiven', step: 'close-lid' } as const;
    bay.does({
      ...answer,
      ask: 'which-gasket',
      answer: { kind: 'choice', option: gasket, reason: { text: 'still whole' } },
    });
    const id = bay.does({
      ...answer,
      ask: 'which-washer',
      answer: { kind: 'choice', option: washer, reason: { text: 'none in stock' } },
    });
    bay.does({ type: 'stepDone', step: 'close-lid' });
    return id;
  };

  test('where the sheet leaves it open is no deviation, and leaves its kit piece to account for', () => {
    const bay = new Bay(lidJob);
    closeLid(bay, 'reused', 'replaced');
    expect(bay.state.deviations).toEqual([]);
    expect(bay.state.parts['gasket']).toEqual({
      where: 'on',
      fitted: 'reused',
      replacementDue: false,
    });
    expect(bay.state.kit['new-gasket']).toEqual({ used: 0, leftOver: 0, extra: 0 });
  });

  test('against the sheet is a deviation, and a new one stays due until a foreman accepts it', () => {
    const bay = new Bay(lidJob);
    const answer = closeLid(bay, 'replaced', 'reused');
    expect(bay.state.deviations).toMatchObject([
      {
        id: `reusedAgainstSheet:${answer}`,
        kind: 'reusedAgainstSheet',
        part: 'washer',
        reason: { text: 'none in stock' },
      },
    ]);
    const washer = () =>
      looseEnds(bay.state)
        .filter(({ key }) => key === 'replacementDue:part:washer')
        .map(({ text, detail }) => `${text}. ${detail ?? ''}`);
    expect(washer()).toEqual(['Locking washer: a new one is due. The same one was fitted again']);
    bay.does(
      {
        type: 'deviationDecided',
        deviation: `reusedAgainstSheet:${answer}`,
        decision: 'accepted',
        reason: why,
      },
      'fred',
    );
    expect(washer()).toEqual([]);
    reopen(bay, 'close-lid');
    expect(washer()).toHaveLength(1);
  });
});
