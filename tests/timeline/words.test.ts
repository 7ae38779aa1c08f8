import { expect, test } from 'vitest';
import { timelineOf, type Kind } from '@/lib/timeline';
import { heardBeforeWords, surenessWords } from '@/lib/timeline/heard-words';
import { Bay } from '../job/driver';
import { doAllOpen, doSteps } from '../job/hands';
import { hatchJob, lidJob } from '../job/lid-procedure';

const why = { text: 'found so' };
type Told = readonly [what: string, kinds: readonly Kind[], details?: readonly string[]];

/** What is told of a job's events, leaving out the first few. */
const toldOf = (bay: Bay, from = 1): readonly Told[] =>
  timelineOf(bay.revision, bay.log)
    .rows.slice(from)
    .map(({ what, kinds, details }) =>
      details.length === 0 ? [what, kinds] : [what, kinds, details],
    );

test('a job begins with the vehicle and the sheet', () => {
  expect(toldOf(new Bay(lidJob), 0)).toEqual([
    [
      'Job opened: Reseal the lid',
      ['steps'],
      ['T 1, Test rig', 'Maker’s sheet Sheet 1, revision A'],
    ],
  ]);
});

test('what a step does to the vehicle is told with the step', () => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid');
  expect(toldOf(bay)).toEqual([
    ['Oil drained: 3 L', ['readings', 'fluids']],
    ['Step done', ['steps', 'fluids'], ['Oil: out']],
    ['Step begun', ['steps']],
    ['Bolts laid out: 3 of 3', ['readings']],
    [
      'Step done',
      ['steps', 'parts'],
      [
        'Lid off, in tray A',
        'Gasket off, in tray A',
        'Locking washer off, in tray A',
        'Lid bolts: off',
      ],
    ],
  ]);
});

test('a reading names its fastener, what it was, and the tool', () => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal');
  expect(toldOf(bay).filter(([what]) => what.startsWith('Ready'))).toEqual([
    ['Ready, before what cannot be undone', ['steps']],
  ]);
  doSteps(bay, 'close-lid', 'snug-lid');
  expect(toldOf(bay).filter(([, kinds]) => kinds.join() === 'parts')).toEqual([
    ['Gasket: replaced by a new one', ['parts']],
    ['Locking washer: replaced by a new one', ['parts']],
  ]);
  bay.begin('tighten-lid');
  const wrench = { id: 'wrench', expandedUncertainty: 0.5 };
  const reading = { type: 'readingTaken', step: 'tighten-lid', ask: 'lid-torque' } as const;
  const wrong = bay.does({
    ...reading,
    fastener: 'lid-2',
    value: 14,
    unit: 'N.m',
    tool: wrench,
  });
  bay.does({ type: 'entryWithdrawn', entry: wrong });
  const [, read, back] = timelineOf(bay.revision, bay.log).rows.slice(-3);
  expect(read).toMatchObject({ what: 'Lid bolt 2: 14 N·m', tool: 'wrench', kinds: ['readings'] });
  expect(back).toMatchObject({ what: 'Taken back: Lid bolt 2: 14 N·m', kinds: ['readings'] });
});

test('an out-of-spec reading makes a deviation as its step is done', () => {
  const bay = new Bay(hatchJob);
  doSteps(bay, 'open');
  bay.begin('close');
  bay.does({ type: 'readingTaken', step: 'close', ask: 'torque', value: 14, unit: 'N.m' });
  bay.does({ type: 'stepDone', step: 'close' });
  expect(toldOf(bay).at(-1)).toEqual([
    'Step done',
    ['steps', 'parts', 'deviations'],
    [
      'Hatch on, the same again',
      'Hatch: tight to the final pass',
      'To be decided: Out of spec, 14 N·m',
    ],
  ]);
});

test('leaving out, deciding and signing are told with the thing that they are about', () => {
  const bay = new Bay(hatchJob);
  doSteps(bay, 'look', 'open');
  bay.does({ type: 'stepLeftOut', step: 'close', reason: why });
  const left = bay.log.at(-1)?.id ?? '';
  bay.does(
    { type: 'deviationDecided', deviation: left, decision: 'acceptedRecheckDue', reason: why },
    'fred',
  );
  bay.does(
    { type: 'looseEndSigned', looseEnd: 'partOff:hatch', mark: 'off ', reason: why },
    'fred',
  );
  bay.does({ type: 'stepReopened', step: 'close', reason: why });
  expect(toldOf(bay).slice(-4)).toEqual([
    ['Step left out', ['steps', 'deviations']],
    ['Accepted, to be checked again after first use: Left out', ['deviations']],
    ['Signed for: Hatch is off', ['signatures']],
    ['Step opened again', ['steps']],
  ]);
});

test('a signature that no longer stands is told', () => {
  const bay = new Bay(hatchJob);
  doSteps(bay, 'look', 'open');
  bay.does(
    { type: 'looseEndSigned', looseEnd: 'partOff:hatch', mark: 'off ', reason: why },
    'fred',
  );
  doSteps(bay, 'close');
  expect(toldOf(bay).at(-1)?.[2]).toContain('A signature stands no longer: Hatch is off');
});

test('what lies elsewhere, is left over, or was not as the sheet has it', () => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid');
  bay.does({ type: 'fastenersLaid', group: 'lid-bolts', tray: 'Tray 7' });
  bay.does({
    type: 'deviationNoted',
    kind: 'missingOrDamaged',
    step: 'open-lid',
    reason: why,
    fastener: 'lid-2',
  });
  bay.does({ type: 'kitLeftOver', kitItem: 'cable-tie', count: 2, reason: why });
  expect(toldOf(bay).slice(-3)).toEqual([
    ['Lid bolts laid in tray 7', ['parts']],
    ['Deviation: Missing or damaged, Lid bolt 2', ['deviations']],
    ['Left over: 2 × Cable tie', ['parts']],
  ]);
});

test('holds, calls and moves, and the end', () => {
  const bay = new Bay(hatchJob);
  bay.does({ type: 'jobHeld', reason: why });
  bay.does({ type: 'foremanCalled' });
  bay.does({ type: 'foremanAnswered' }, 'fay');
  bay.does({ type: 'jobReassigned', bay: 'bay-2', mechanic: 'max', reason: why }, 'fay');
  bay.does({ type: 'jobReassigned', bay: 'bay-3', reason: why }, 'fay');
  bay.does({ type: 'jobResumed' });
  doAllOpen(bay);
  bay.does({ type: 'jobClosed' });
  const { rows } = timelineOf(bay.revision, bay.log);
  expect(rows.slice(1, 7).map(({ what, whom, bay: where }) => [what, whom, where])).toEqual([
    ['Put on hold', undefined, 'bay-1'],
    ['Foreman called', undefined, 'bay-1'],
    ['Foreman answered', undefined, 'bay-1'],
    ['Moved to another bay and given to', 'max', 'bay-2'],
    ['Moved to another bay', undefined, 'bay-3'],
    ['Hold lifted', undefined, 'bay-3'],
  ]);
  expect(new Set(rows.slice(1, 7).flatMap(({ kinds }) => kinds))).toEqual(new Set(['holds']));
  expect(rows.at(-1)?.what).toBe('Job closed');
});

test('what was heard is kept with the event, and makes it one that was heard', () => {
  const bay = new Bay(hatchJob);
  const [opening] = bay.log;
  if (opening === undefined) throw new Error('no opening');
  const input = {
    by: 'voice',
    said: 'call the foreman',
    confidence: 0.8,
    askedBack: true,
  } as const;
  const called = {
    ...opening,
    id: '00000000-0000-4000-8000-000000000999',
    seq: 2,
    input,
    happening: { type: 'foremanCalled' } as const,
  };
  const [, row] = timelineOf(hatchJob, [opening, called]).rows;
  expect(row?.kinds).toEqual(['heard', 'holds']);
  expect(row?.heard).toEqual(input);
  const before = [{ said: 'foreman', became: 'notUnderstood' as const }];
  const touched = { ...called, input: { by: 'touch' } as const, heardBefore: before };
  const [, silent] = timelineOf(hatchJob, [opening, touched]).rows;
  expect(silent).toMatchObject({ kinds: ['heard', 'holds'], heardBefore: before });
});

test('how sure the hearing was is said in words, and of which words it was not', () => {
  const heard = {
    by: 'voice',
    said: 'a stud came out',
    confidence: 0.52,
    askedBack: false,
  } as const;
  expect(surenessWords(heard)).toBe('not asked back, least sure word 52 %');
  expect(surenessWords({ ...heard, askedBack: true, unsure: [1, 3, 9] })).toBe(
    'asked back and confirmed, not sure of “stud”, “out”',
  );
  expect(heardBeforeWords({ said: 'next', became: 'declined' })).toBe(
    '“next”, asked back and declined',
  );
});
