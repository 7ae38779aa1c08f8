import { expect, test } from 'vitest';
import { handOverRecord, namesOf } from '@/lib/record';
import { Bay } from '../job/driver';
import { doAllOpen, doStep, doSteps, workOff } from '../job/hands';
import { lidJob } from '../job/lid-procedure';

const names = namesOf({
  people: [
    { id: 'mia', name: 'Mia Holt' },
    { id: 'fred', name: 'Fred Lunn' },
  ],
  torqueTools: [{ id: 'wrench', name: 'Middle wrench' }],
});

const closedJob = () => {
  const bay = new Bay(lidJob);
  doAllOpen(bay);
  workOff(bay);
  bay.does({ type: 'jobClosed' });
  return bay;
};

const recordOf = (bay: Bay) => handOverRecord(bay.state, names);

test('the record says who worked, who closed, and on which vehicle', () => {
  const record = recordOf(closedJob());
  expect(record.title).toBe('Reseal the lid');
  expect(record.sheet).toBe('Sheet 1, revision A');
  expect(record.workers).toEqual(['Mia Holt']);
  expect(record.closed?.by).toBe('Mia Holt');
  expect(record.vehicle).toEqual([
    { name: 'Plate', value: 'T 1' },
    { name: 'Vehicle', value: 'Test rig' },
  ]);
});

test('what was fitted, replaced and used again stands apart', () => {
  expect(recordOf(closedJob()).parts).toEqual({
    fitted: ['Lamp', 'Lamp screws (2)'],
    replaced: ['Gasket', 'Locking washer', 'Shaft seal', 'Hub bolt'],
    reused: ['Lid', 'Lid bolts (3)'],
  });
});

test('fluids come with their volumes', () => {
  expect(recordOf(closedJob()).fluids).toEqual([{ name: 'Oil', drained: '3 L', filled: '3 L' }]);
});

test('each torque stands with what was asked, read, judged, and the tool by its name', () => {
  const { tightened, measured } = recordOf(closedJob());
  expect(tightened.map(({ what }) => what)).toEqual([
    'Lid bolt 1, torque',
    'Lid bolt 2, torque',
    'Lid bolt 3, torque',
    'Hub bolt, torque',
    'Hub bolt, angle',
    'Idler nut, torque',
  ]);
  expect(tightened[0]).toEqual({
    what: 'Lid bolt 1, torque',
    asked: '10.0 N·m (9–11 N·m)',
    read: '10 N·m',
    verdict: 'inSpec',
    verdictWords: 'in spec',
    tool: 'Middle wrench',
  });
  expect(measured).toMatchObject([{ what: 'Voltage at the lamp', asked: 'at least 11.5 V' }]);
});

test('what was tightened by feel is told beside the torques, once it is tight', () => {
  expect(recordOf(closedJob()).unread).toEqual([
    { what: 'Lamp screws (2)', how: 'By feel: the sheet gives no figure' },
  ]);
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid');
  expect(recordOf(bay).unread).toEqual([]);
  doSteps(bay, 'lamp');
  expect(recordOf(bay).unread).toHaveLength(1);
  bay.does({ type: 'stepReopened', step: 'lamp', reason: { text: 'rattles' } });
  expect(recordOf(bay).unread).toEqual([]);
});

test('what the sheet tightens to a figure without asking for a value is told as such', () => {
  const asksNothing = {
    ...lidJob,
    steps: lidJob.steps.map((step) => (step.id === 'tighten-lid' ? { ...step, asks: [] } : step)),
  };
  const bay = new Bay(asksNothing);
  doAllOpen(bay);
  expect(recordOf(bay).unread[0]).toEqual({
    what: 'Lid bolts (3)',
    how: 'To 10.0 N·m (9–11 N·m) by the sheet, which asks for no reading',
  });
});

test('the kit is accounted for, and what was put on is named with where', () => {
  const { kit, applied } = recordOf(closedJob());
  expect(kit).toEqual({
    used: ['Seal', 'Gasket', 'Hub bolt', 'Lamp', 'Cable tie (2)'],
    leftOver: ['Cable tie (2)'],
    further: [],
  });
  expect(applied).toEqual(['Thread-locker: Hub bolt, Idler nut', 'Grease: Shaft seal']);
});

test('a piece that the kit does not hold is told', () => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid', 'open-hub', 'press-seal');
  bay.does({ type: 'stepReopened', step: 'press-seal', reason: { text: 'sits askew' } });
  doStep(bay, 'press-seal');
  expect(recordOf(bay).kit).toMatchObject({ used: ['Seal'], further: ['Seal'] });
});

test('a reading that was taken again, or taken back, is not on the record', () => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain');
  bay.does({ type: 'stepReopened', step: 'drain', reason: { text: 'misread' } });
  expect(recordOf(bay).fluids).toEqual([]);
  doStep(bay, 'drain');
  expect(recordOf(bay).fluids).toEqual([{ name: 'Oil', drained: '3 L' }]);
});

test('checks and counts say how they came out', () => {
  expect(recordOf(closedJob()).checks).toEqual([
    { what: 'Bolts laid out', outcome: '3 of 3', good: true },
    { what: 'Seal sits square (It is flush all round)', outcome: 'passed', good: true },
    { what: 'No leak (Dry after two minutes)', outcome: 'passed', good: true },
  ]);
});

test('a deviation says what, why, who accepted it, and what is due after first use', () => {
  const bay = new Bay(lidJob);
  bay.begin('drain');
  const id = bay.does({
    type: 'deviationNoted',
    kind: 'missingOrDamaged',
    step: 'drain',
    part: 'lid',
    reason: { text: 'A small dent' },
  });
  expect(recordOf(bay).deviations[0]?.decision).toBe('Not decided yet');
  bay.does(
    {
      type: 'deviationDecided',
      deviation: id,
      decision: 'acceptedRecheckDue',
      reason: { text: 'Does no harm' },
    },
    'fred',
  );
  const record = recordOf(bay);
  expect(record.deviations).toEqual([
    {
      what: 'Missing or damaged: Lid',
      why: 'A small dent',
      decision: 'Accepted, to be checked again after first use by Fred Lunn: Does no harm',
    },
  ]);
  expect(record.due).toEqual(['Check again after first use: Lid']);
});

test('a job that is not closed says so and lists what nobody signed for', () => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain');
  const record = recordOf(bay);
  expect(record.closed).toBeUndefined();
  expect(record.open).toContain('Oil is out');
});

test('no id of the shop or of the sheet reaches the paper', () => {
  const text = JSON.stringify(recordOf(closedJob()));
  for (const id of ['"mia"', '"fred"', '"wrench"', 'lid-bolts', 'hub-1', 'new-seal', 'bay-1'])
    expect(text).not.toContain(id);
});
