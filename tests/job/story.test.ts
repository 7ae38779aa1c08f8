import { describe, expect, test } from 'vitest';
import { looseEnds, mayClose, unsigned } from '@/lib/ledger';
import { Bay } from './driver';
import { doAllOpen, doStep, doSteps, workOff } from './hands';
import { hatchJob, lidJob } from './lid-procedure';

const why = { text: 'found so' };
const texts = (bay: Bay) => unsigned(bay.state).map(({ text }) => text);

describe('a whole job', () => {
  test('goes from the first step to closed, with nothing signed', () => {
    const bay = new Bay(lidJob);
    doAllOpen(bay);
    expect(texts(bay)).toEqual(['Cable tie: 2 of 4 not accounted for']);
    bay.does({ type: 'kitLeftOver', kitItem: 'cable-tie', count: 2, reason: why });
    expect(looseEnds(bay.state)).toEqual([]);
    bay.does({ type: 'jobClosed' });
    expect(bay.state.phase).toBe('closed');
    expect(bay.state.closedBy).toBe('mia');
    expect(bay.state.clockSince).toBeUndefined();
    expect(bay.state.workers).toEqual(['mia']);
  });

  test('starts with what the kit must bring, and the steps', () => {
    const bay = new Bay(lidJob);
    expect(bay.state.currentStep).toBe('drain');
    expect(bay.state.fasteners['lamp-1']?.stage).toBe('off');
    expect(bay.state.fasteners['lid-1']?.stage).toBe('untouched');
    expect(texts(bay).slice(0, 8)).toEqual([
      'Lamp is not fitted',
      'Seal: 1 of 1 not accounted for',
      'Gasket: 1 of 1 not accounted for',
      'Hub bolt: 1 of 1 not accounted for',
      'Lamp: 1 of 1 not accounted for',
      'Cable tie: 4 of 4 not accounted for',
      'Lamp screw 1 is off: hole 1, 10 mm',
      'Lamp screw 2 is off: hole 2, 10 mm',
    ]);
  });
});

describe('opening the lid', () => {
  test('says where every bolt lies, which hole it came from and how long it is', () => {
    const bay = new Bay(lidJob);
    doSteps(bay, 'lamp', 'drain', 'open-lid');
    expect(looseEnds(bay.state).filter(({ kind }) => kind === 'fastenerOpen')).toEqual([
      {
        kind: 'fastenerOpen',
        key: 'fastenerOpen:lid-1',
        mark: 'off A 1',
        text: 'Lid bolt 1 is off: tray A place 1, hole 1, 20 mm',
        step: 'close-lid',
      },
      {
        kind: 'fastenerOpen',
        key: 'fastenerOpen:lid-2',
        mark: 'off A 2',
        text: 'Lid bolt 2 is off: tray A place 2, hole 2, 25 mm',
        step: 'close-lid',
      },
      {
        kind: 'fastenerOpen',
        key: 'fastenerOpen:lid-3',
        mark: 'off A 3',
        text: 'Lid bolt 3 is off: tray A place 3, hole 3, 35 mm',
        step: 'close-lid',
      },
    ]);
    expect(texts(bay)).toContain('Oil is out');
    expect(texts(bay)).toContain('Lid is off');
    expect(texts(bay)).toContain('Locking washer: a new one is due');
    expect(texts(bay)).not.toContain('Gasket: a new one is due');
  });

  test('bolts laid elsewhere are found elsewhere', () => {
    const bay = new Bay(lidJob);
    doSteps(bay, 'drain', 'open-lid');
    bay.does({ type: 'fastenersLaid', group: 'lid-bolts', tray: 'Tray 7' });
    expect(texts(bay)).toContain('Lid bolt 2 is off: tray 7 place 2, hole 2, 25 mm');
  });

  test('a bolt that is lost is for a foreman to decide', () => {
    const bay = new Bay(lidJob);
    doSteps(bay, 'drain', 'open-lid');
    const lost = bay.does({
      type: 'deviationNoted',
      kind: 'missingOrDamaged',
      step: 'open-lid',
      reason: { text: 'fell into the drain' },
      fastener: 'lid-2',
    });
    workOffButDeviations(bay);
    expect(unsigned(bay.state).map(({ text, detail }) => ({ text, detail }))).toEqual([
      {
        text: 'Missing or damaged, Lid bolt 2, at step 2, Take off the lid: undecided',
        detail: 'fell into the drain',
      },
    ]);
    expect(bay.refused({ type: 'jobClosed' })).toBe('looseEndsOpen');
    bay.does(
      { type: 'deviationDecided', deviation: lost, decision: 'accepted', reason: why },
      'fred',
    );
    bay.does({ type: 'jobClosed' });
    expect(bay.state.phase).toBe('closed');
  });
});

const workOffButDeviations = (bay: Bay): void => {
  doAllOpen(bay);
  bay.does({ type: 'kitLeftOver', kitItem: 'cable-tie', count: 2, reason: why });
};

describe('a foreman signs', () => {
  /** The hatch is open and stays so: its step is left out. */
  const leftOpen = (): Bay => {
    const bay = new Bay(hatchJob);
    doSteps(bay, 'look', 'open');
    bay.does({ type: 'stepLeftOut', step: 'close', reason: { text: 'vehicle goes to paint' } });
    return bay;
  };

  test('for each thing that stays open, and then the job closes', () => {
    const bay = leftOpen();
    expect(texts(bay)).toEqual([
      'Hatch is off',
      'Hatch bolt 1 is off: hole 1, 20 mm',
      'Hatch bolt 2 is off: hole 2, 20 mm',
      'Hatch bolt torque: no reading',
      'Left out, at step 3, Put on the hatch: undecided',
    ]);
    for (const end of looseEnds(bay.state)) {
      expect(mayClose(bay.state)).toBe(false);
      bay.does({ type: 'looseEndSigned', looseEnd: end.key, mark: end.mark, reason: why }, 'fred');
    }
    expect(looseEnds(bay.state).map(({ signedBy }) => signedBy)).toEqual(Array(5).fill('fred'));
    expect(mayClose(bay.state)).toBe(true);
    bay.does({ type: 'jobClosed' });
  });

  test('but not for own work, and a mechanic not at all', () => {
    const bay = leftOpen();
    const [hatch] = looseEnds(bay.state);
    const sign = {
      type: 'looseEndSigned' as const,
      looseEnd: hatch?.key ?? '',
      mark: hatch?.mark ?? '',
      reason: why,
    };
    bay.does({ type: 'fastenersLaid', group: 'hatch-bolts', tray: 'A' }, 'fay');
    expect(bay.refused(sign, 'fay')).toBe('ownWork');
    expect(bay.refused(sign, 'mia')).toBe('notForeman');
    expect(bay.refused(sign, 'max')).toBe('notForeman');
    expect(bay.refused(sign, 'fred')).toBe('accepted');
  });

  test('and the signature lapses when the thing changes, even if it comes to be as before', () => {
    const bay = leftOpen();
    const bolt = looseEnds(bay.state).find(({ key }) => key === 'fastenerOpen:lid-1');
    const sign = (mark: string) =>
      bay.refused(
        { type: 'looseEndSigned', looseEnd: 'fastenerOpen:lid-1', mark, reason: why },
        'fred',
      );
    expect(sign(bolt?.mark ?? '')).toBe('accepted');
    bay.does({ type: 'fastenersLaid', group: 'hatch-bolts', tray: 'A' });
    expect(bay.state.signatures).toEqual([]);
    expect(sign(bolt?.mark ?? '')).toBe('looseEndChanged');
    expect(sign('off A 1')).toBe('accepted');
    bay.does({ type: 'fastenersLaid', group: 'hatch-bolts', tray: 'B' });
    bay.does({ type: 'fastenersLaid', group: 'hatch-bolts', tray: 'A' });
    expect(texts(bay)).toContain('Hatch bolt 1 is off: tray A place 1, hole 1, 20 mm');
  });

  test('and it lapses when the foreman works on the job after all', () => {
    const bay = leftOpen();
    const [hatch] = looseEnds(bay.state);
    bay.does(
      {
        type: 'looseEndSigned',
        looseEnd: hatch?.key ?? '',
        mark: hatch?.mark ?? '',
        reason: why,
      },
      'fay',
    );
    expect(texts(bay)).not.toContain('Hatch is off');
    bay.does({ type: 'fastenersLaid', group: 'hatch-bolts', tray: 'A' }, 'fay');
    expect(texts(bay)).toContain('Hatch is off');
  });
});

describe('a reading out of spec', () => {
  const tightenHatch = (bay: Bay, value: number): string => {
    doSteps(bay, 'look', 'open');
    bay.begin('close');
    const id = bay.does({
      type: 'readingTaken',
      step: 'close',
      ask: 'torque',
      value,
      unit: 'N.m',
    });
    bay.does({ type: 'stepDone', step: 'close' });
    return id;
  };

  test('lets the step be done, and stands in the ledger until a foreman accepts it', () => {
    const bay = new Bay(hatchJob);
    const reading = tightenHatch(bay, 12.5);
    expect(unsigned(bay.state).map(({ text, detail }) => ({ text, detail }))).toEqual([
      {
        text: 'Hatch bolt torque: 12.5 N·m is out of spec',
        detail: 'Asked: 9 to 11 N·m',
      },
      { text: 'Out of spec, 12.5 N·m, at step 3, Put on the hatch: undecided', detail: undefined },
    ]);
    bay.does(
      {
        type: 'deviationDecided',
        deviation: `outOfSpec:${reading}`,
        decision: 'acceptedRecheckDue',
        reason: why,
      },
      'fred',
    );
    expect(texts(bay)).toEqual([]);
  });

  test('stays when the foreman wants rework, until that is done', () => {
    const bay = new Bay(hatchJob);
    const reading = tightenHatch(bay, 12.5);
    bay.does(
      {
        type: 'deviationDecided',
        deviation: `outOfSpec:${reading}`,
        decision: 'rework',
        reason: { text: 'use another wrench' },
      },
      'fred',
    );
    expect(texts(bay)).toEqual([
      'Hatch bolt torque: 12.5 N·m is out of spec',
      'Rework asked for at step 3, Put on the hatch',
    ]);
    const rework = bay.does({ type: 'stepReopened', step: 'close', reason: why });
    doStep(bay, 'close');
    expect(texts(bay)).toEqual(['Rework, at step 3, Put on the hatch: undecided']);
    bay.does(
      { type: 'deviationDecided', deviation: rework, decision: 'accepted', reason: why },
      'fred',
    );
    expect(texts(bay)).toEqual([]);
    expect(bay.state.readings.map(({ value, status }) => ({ value, status }))).toEqual([
      { value: 12.5, status: 'superseded' },
      { value: 10, status: 'counted' },
    ]);
  });

  test('can be taken back before the step is done, and then leaves no deviation', () => {
    const bay = new Bay(hatchJob);
    doSteps(bay, 'look', 'open');
    bay.begin('close');
    const entry = bay.does({
      type: 'readingTaken',
      step: 'close',
      ask: 'torque',
      value: 12.5,
      unit: 'N.m',
    });
    bay.does({ type: 'entryWithdrawn', entry });
    expect(bay.refused({ type: 'stepDone', step: 'close' })).toBe('askOpen');
    doStep(bay, 'close');
    expect(bay.state.deviations).toEqual([]);
    expect(bay.state.readings.map(({ status }) => status)).toEqual(['withdrawn', 'counted']);
  });
});

describe('a safety-critical reading without a known uncertainty', () => {
  test('is not provable, and the ledger says so', () => {
    const bay = new Bay(lidJob);
    doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal', 'close-hub');
    bay.begin('tighten-hub');
    const torque = { type: 'readingTaken', step: 'tighten-hub', unit: 'N.m' } as const;
    bay.does({ ...torque, ask: 'hub-torque', value: 60 });
    bay.does({ ...torque, ask: 'idler-torque', value: 25 });
    bay.does({
      ...torque,
      ask: 'hub-angle',
      value: 90,
      unit: 'deg',
      tool: { id: 'gauge', expandedUncertainty: 2 },
    });
    bay.does({ type: 'stepDone', step: 'tighten-hub' });
    expect(bay.state.readings.slice(-3).map(({ verdict }) => verdict)).toEqual([
      'notProvable',
      'inSpec',
      'inSpec',
    ]);
    expect(texts(bay)).toContain('Hub bolt torque: 60 N·m cannot be proven in spec');
  });
});

describe('working the ledger off', () => {
  test('needs no signature for a job gone wrong in every way', () => {
    const bay = new Bay(lidJob);
    doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal', 'close-hub', 'tighten-hub');
    bay.does({ type: 'stepReopened', step: 'press-seal', reason: why });
    bay.does({ type: 'stepLeftOut', step: 'lamp', reason: why });
    workOff(bay);
    expect(looseEnds(bay.state)).toEqual([]);
    expect(bay.state.signatures).toEqual([]);
  });
});
