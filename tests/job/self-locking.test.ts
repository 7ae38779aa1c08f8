import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { askedValue, judgeValue, replay } from '@/lib/job';
import { toleranceInterval } from '@/lib/fastening';
import { looseEnds } from '@/lib/ledger';
import { askOf, checkRevision, stepOf, type Revision, type ValueAsk } from '@/lib/procedure';
import { Bay } from './driver';
import { doSteps } from './hands';
import { nutAsk, nutJob } from './nut-procedure';

const torqueAsk = (revision: Revision): ValueAsk => {
  const step = stepOf(revision, 'close');
  const ask = step && askOf(step, 'torque');
  if (ask?.kind !== 'value') throw new Error('the example has changed');
  return ask;
};

const atNuts = (revision = nutJob()): Bay => {
  const bay = new Bay(revision);
  doSteps(bay, 'look', 'open');
  bay.begin('close');
  return bay;
};

const read = (
  bay: Bay,
  ask: 'turning' | 'torque',
  value: number,
  fastener: 'lid-1' | 'lid-2' | 'all' = 'lid-1',
  expandedUncertainty?: number,
): string =>
  bay.does({
    type: 'readingTaken',
    step: 'close',
    ask,
    ...(fastener === 'all' ? {} : { fastener }),
    value,
    unit: 'N.m',
    ...(expandedUncertainty === undefined ? {} : { tool: { id: 'w', expandedUncertainty } }),
  });

const verdicts = (bay: Bay): readonly string[] =>
  bay.state.readings
    .filter(({ step, status }) => step === 'close' && status !== 'withdrawn')
    .map(({ ask, fastener, value, verdict }) => [ask, fastener, value, verdict].join(' '));

const nutEnds = (bay: Bay): readonly string[] =>
  looseEnds(bay.state)
    .filter(({ kind }) => kind.startsWith('reading'))
    .map(({ text, detail = '' }) => `${text} (${detail})`);

describe('the torque of a self-locking nut', () => {
  test('is judged by the sheet’s window moved up by what that nut took to turn', () => {
    const bay = atNuts();
    read(bay, 'turning', 6);
    read(bay, 'turning', 3, 'lid-2');
    read(bay, 'torque', 50);
    read(bay, 'torque', 50, 'lid-2');
    expect(verdicts(bay)).toEqual([
      'turning lid-1 6 inSpec',
      'turning lid-2 3 inSpec',
      'torque lid-1 50 outOfSpec', // 51 to 61
      'torque lid-2 50 inSpec', // 48 to 58
    ]);
  });

  test('is set to the sheet’s figure and what the nut took', () => {
    const bay = atNuts();
    read(bay, 'turning', 6);
    expect(askedValue(bay.state, torqueAsk(bay.revision), 'lid-1')).toMatchObject({
      specification: { kind: 'target', unit: 'N.m', target: 56 },
      prevailing: {
        kind: 'added',
        setNm: 56,
        explain: '50 N·m specified + 6 N·m to turn the nut = 56 N·m',
      },
    });
    expect(
      judgeValue(
        bay.state,
        torqueAsk(bay.revision),
        'lid-1',
        { value: 57, unit: 'N.m' },
        undefined,
      ),
    ).toEqual({
      verdict: 'inSpec',
      sentence: '57 N·m is within 51–61 N·m; 50 N·m specified + 6 N·m to turn the nut = 56 N·m.',
    });
  });

  test('proves nothing before that is measured, but is out of spec where no nut could explain it', () => {
    const bay = atNuts();
    for (const [value, verdict] of [
      [44, 'outOfSpec'],
      [45, 'notProvable'],
      [67, 'notProvable'],
      [68, 'outOfSpec'],
    ] as const) {
      read(bay, 'torque', value);
      expect([value, bay.state.readings.at(-1)?.verdict]).toEqual([value, verdict]);
    }
  });

  test('is judged anew once the nut is measured, measured otherwise, or that is taken back', () => {
    const bay = atNuts();
    read(bay, 'torque', 50);
    const torque = () => bay.state.readings.find(({ ask }) => ask === 'torque')?.verdict;
    expect(torque()).toBe('notProvable');
    read(bay, 'turning', 6);
    expect(torque()).toBe('outOfSpec');
    const again = read(bay, 'turning', 3);
    expect(torque()).toBe('inSpec');
    bay.does({ type: 'entryWithdrawn', entry: again });
    expect(torque()).toBe('notProvable');
    expect(replay(bay.revision, bay.log)).toEqual({ ok: true, value: bay.state });
  });

  test('may go by one measured nut for all', () => {
    const bay = atNuts(nutJob({ each: false }));
    read(bay, 'turning', 6, 'all');
    read(bay, 'torque', 56, 'all');
    expect(verdicts(bay)).toEqual(['turning  6 inSpec', 'torque  56 inSpec']);
  });

  // JCGM 100 §5.1.2: U = √(1² + 0.5²) = 1.118 N·m; 51 + 1.118 = 52.118 is the lowest that is proven.
  test('on a safety-critical joint must be proven for what both tools may be off', () => {
    const bay = atNuts(nutJob({ safetyCritical: true }));
    read(bay, 'turning', 6, 'lid-1', 0.5);
    read(bay, 'torque', 52.1, 'lid-1', 1);
    expect(bay.state.readings.at(-1)?.verdict).toBe('notProvable');
    read(bay, 'torque', 52.2, 'lid-1', 1);
    expect(bay.state.readings.at(-1)?.verdict).toBe('inSpec');
  });

  test('is not proven where nobody knows how far the tool was off that turned the nut', () => {
    const bay = atNuts(nutJob({ safetyCritical: true }));
    read(bay, 'turning', 6);
    read(bay, 'torque', 56, 'lid-1', 1);
    expect(bay.state.readings.at(-1)?.verdict).toBe('notProvable');
  });

  test('rises with the nut: what was read less what it took decides, whatever the figures', () => {
    const nm = fc.integer({ min: 200, max: 1200 }).map((cNm) => cNm / 100);
    fc.assert(
      fc.property(nm, fc.integer({ min: 3000, max: 8000 }), (turning, cNm) => {
        const bay = atNuts();
        const torque = cNm / 100;
        read(bay, 'turning', turning);
        read(bay, 'torque', torque);
        const seated = torque - turning;
        const expected = seated >= 45 - 1e-9 && seated <= 55 + 1e-9 ? 'inSpec' : 'outOfSpec';
        expect(bay.state.readings.at(-1)?.verdict).toBe(expected);
        const window = toleranceInterval(
          askedValue(bay.state, torqueAsk(bay.revision), 'lid-1').specification,
        );
        expect(window?.lower).toBeCloseTo(45 + turning, 9);
        expect(window?.upper).toBeCloseTo(55 + turning, 9);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a nut that turns too easily or too stiffly', () => {
  test('is a finding that says what to do, and nothing is proven with it', () => {
    const bay = atNuts();
    read(bay, 'turning', 1.5);
    read(bay, 'turning', 13, 'lid-2');
    read(bay, 'torque', 52);
    read(bay, 'torque', 52, 'lid-2');
    bay.does({ type: 'stepDone', step: 'close' });
    expect(nutEnds(bay)).toEqual([
      'Hatch nut 1, prevailing torque: 1.5 N·m is out of spec ' +
        '(It turns at 1.5 N·m, allowed is 2–12 N·m: it no longer locks, take a new nut.)',
      'Hatch nut 2, prevailing torque: 13 N·m is out of spec ' +
        '(It turns only at 13 N·m, allowed is 2–12 N·m: look at both threads before going on.)',
      'Hatch nut 1, torque: 52 N·m cannot be proven in spec ' +
        '(It turns at 1.5 N·m, allowed is 2–12 N·m: it no longer locks, take a new nut.)',
      'Hatch nut 2, torque: 52 N·m cannot be proven in spec ' +
        '(It turns only at 13 N·m, allowed is 2–12 N·m: look at both threads before going on.)',
    ]);
    expect(bay.state.deviations.map(({ kind, fastener }) => [kind, fastener])).toEqual([
      ['outOfSpec', 'lid-1'],
      ['outOfSpec', 'lid-2'],
    ]);
  });
});

describe('the ledger', () => {
  test('misses what a nut takes to turn, and says what its torque hangs on', () => {
    const bay = atNuts();
    bay.does({ type: 'stepLeftOut', step: 'close', reason: { text: 'no time' } });
    expect(nutEnds(bay)).toEqual([
      'Hatch nut 1, prevailing torque: no reading (Asked: 2 to 12 N·m)',
      'Hatch nut 2, prevailing torque: no reading (Asked: 2 to 12 N·m)',
      'Hatch nut 1, torque: no reading ' +
        '(Asked: 45 to 55 N·m, and on top what it takes to turn before it seats)',
      'Hatch nut 2, torque: no reading ' +
        '(Asked: 45 to 55 N·m, and on top what it takes to turn before it seats)',
    ]);
  });

  test('shows the moved window of a torque that is out of it', () => {
    const bay = atNuts();
    read(bay, 'turning', 6);
    read(bay, 'turning', 6, 'lid-2');
    read(bay, 'torque', 50);
    read(bay, 'torque', 56, 'lid-2');
    bay.does({ type: 'stepDone', step: 'close' });
    expect(nutEnds(bay)).toEqual([
      'Hatch nut 1, torque: 50 N·m is out of spec ' +
        '(Asked: 51 to 61 N·m, 50 N·m specified + 6 N·m to turn the nut = 56 N·m)',
    ]);
  });
});

describe('a procedure with self-locking nuts', () => {
  const faults = (change: (revision: Revision) => Revision) =>
    checkRevision(change(nutJob())).faults.map(({ message }) => message);
  const asking =
    (...asks: readonly ValueAsk[]) =>
    (revision: Revision) => ({
      ...revision,
      steps: revision.steps.map((step) =>
        step.id === 'close' ? { ...step, asks: [...asks] } : step,
      ),
    });
  const allowing =
    (
      prevailing: Revision['groups'][number]['passes'][number]['prevailing'],
      tightening?: Revision['groups'][number]['passes'][number]['tightening'],
    ) =>
    (revision: Revision): Revision => ({
      ...revision,
      groups: revision.groups.map((group) => ({
        ...group,
        passes: group.passes.map(({ prevailing: _, ...pass }) => ({
          ...pass,
          ...(prevailing === undefined ? {} : { prevailing }),
          ...(tightening === undefined ? {} : { tightening }),
        })),
      })),
    });

  test('has nothing against it as it is', () => {
    expect(checkRevision(nutJob())).toEqual({ faults: [], doubts: [] });
    expect(checkRevision(nutJob({ each: false }))).toEqual({ faults: [], doubts: [] });
  });

  test('asks what they take to turn', () => {
    expect(faults(asking(nutAsk('torque', 'torque', true)))).toEqual([
      '“Hatch nuts”, pass “final”: no step asks what its nuts take to turn before they seat.',
    ]);
  });

  test('asks it before the torque', () => {
    expect(
      faults(asking(nutAsk('torque', 'torque', true), nutAsk('turning', 'prevailing', true))),
    ).toEqual([
      '“Hatch nuts”, pass “final”: ask what its nuts take to turn before the torque is asked for.',
    ]);
  });

  test('asks the torque of each where it measures each', () => {
    expect(
      faults(asking(nutAsk('turning', 'prevailing', true), nutAsk('torque', 'torque', false))),
    ).toEqual([
      '“Hatch nuts”, pass “final”: its nuts are measured each, so ask the torque of each too.',
    ]);
  });

  test('says what they may take, in a unit of torque', () => {
    expect(faults(allowing(undefined))).toEqual([
      '“Hatch nuts”, pass “final”: a step asks what its nuts take to turn, and it allows nothing.',
    ]);
    expect(faults(allowing({ kind: 'noFigure', unit: 'N.m' }))).toEqual([
      '“Hatch nuts”, pass “final”: say how much or how little its nuts may take to turn.',
    ]);
    expect(faults(allowing({ kind: 'range', unit: 'mm', lower: 2, upper: 12 }))).toEqual([
      '“Hatch nuts”, pass “final”, prevailing torque: “mm” is a unit of length, not of torque.',
    ]);
    expect(faults(allowing({ kind: 'range', unit: 'N.m', lower: 12, upper: 2 }))).toEqual([
      '“Hatch nuts”, pass “final”, prevailing torque: The lower limit is above the upper one.',
    ]);
  });

  test('has a torque that they add to', () => {
    expect(
      faults(allowing({ kind: 'range', unit: 'N.m', lower: 2, upper: 12 }, { kind: 'byFeel' })),
    ).toEqual(['“Hatch nuts”, pass “final”: there is no torque that its nuts could add to.']);
  });

  test('is doubted where turning them takes more than tightening', () => {
    const cNm = allowing({ kind: 'range', unit: 'N.m', lower: 20, upper: 120 });
    expect(checkRevision(cNm(nutJob())).doubts.map(({ message }) => message)).toEqual([
      '“Hatch nuts”, pass “final”: its nuts would take more to turn than to tighten.',
    ]);
  });
});
