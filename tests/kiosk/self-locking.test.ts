import { describe, expect, test } from 'vitest';
import { openJob } from '@/lib/job';
import {
  currentStep,
  kioskTransition,
  openKiosk,
  openWants,
  toolsForStep,
  wantLabel,
} from '@/lib/kiosk';
import type { TorqueTool } from '@/lib/shop';
import { nutJob } from '../job/nut-procedure';
import { Driver } from './driver';
import { env, openedEvent } from './tiny-cover';

/** At the step that wants what two self-locking nuts take to turn (2 to 12 N·m) and their torque (50 N·m ± 10 %). */
const atNuts = (): Driver => {
  const job = openJob(nutJob(), {
    ...openedEvent,
    happening: {
      type: 'jobOpened',
      procedure: 'nuts',
      revision: 1,
      vehicle: { plate: 'F-001', description: 'Test van' },
      bay: 'bay-1',
    },
  });
  if (!job.ok) throw new Error(job.error.message);
  const driver = new Driver();
  driver.state = openKiosk(job.value);
  return driver.say({ kind: 'check', passed: true }).next().next();
};

const tool = (id: string, kind: TorqueTool['kind'], lowerNm: number, upperNm: number) =>
  ({
    id,
    name: id,
    kind,
    driveIn: '3/8',
    lowerNm,
    upperNm,
    resolutionNm: 0.1,
    calibration: { on: '2026-01-10', intervalMonths: 12, intervalCycles: 5000 },
  }) satisfies TorqueTool;

describe('self-locking nuts', () => {
  test('are first asked for what each takes to turn, then for the torque of each', () => {
    const { state } = atNuts();
    expect(
      openWants(state.job, currentStep(state.job)).map((want) => wantLabel(state.job, want)),
    ).toEqual([
      'Hatch nut 1, prevailing torque',
      'Hatch nut 2, prevailing torque',
      'Hatch nut 1',
      'Hatch nut 2',
    ]);
  });

  test('take spoken numbers in that order, each torque judged by its own moved window', () => {
    const d = atNuts().value(6).value(3);
    expect(d.text).toBe('Hatch nut 2, prevailing torque: 3 N·m, in spec');
    d.value(57);
    expect(d.state.outcome?.figure).toMatchObject({
      label: 'Hatch nut 1',
      verdict: 'inSpec',
      sentence: '57 N·m is within 51–61 N·m; 50 N·m specified + 6 N·m to turn the nut = 56 N·m.',
    });
    d.value(60);
    expect(d.text).toBe('Hatch nut 2: 60 N·m? out of spec');
    expect(d.state.outcome?.figure?.sentence).toBe(
      '60 N·m is above 58 N·m, out of spec by 2 N·m; 50 N·m specified + 3 N·m to turn the nut = 53 N·m.',
    );
  });

  test('that turn too easily are asked back with what to do', () => {
    const d = atNuts().value(1.5);
    expect(d.state.question?.kind).toBe('value');
    expect(d.state.outcome?.figure?.sentence).toBe(
      'It turns at 1.5 N·m, allowed is 2–12 N·m: it no longer locks, take a new nut. ' +
        '1.5 is the lbf·ft figure; 2 N·m? If so, answer no and give it with its unit.',
    );
  });

  test('may be turned in any order: that tightens nothing', () => {
    const d = atNuts().value(6, { label: '2' });
    expect(d.state.question).toBeUndefined();
    expect(d.state.job.readings.at(-1)?.fastener).toBe('lid-2');
  });

  test('have their torque set on a click wrench, and are turned with one that shows', () => {
    const click = tool('click', 'click', 1, 100);
    const dial = tool('dial', 'dial', 1, 20);
    const cabinet = { tools: [click, dial], cycles: {} };
    const d = atNuts();
    const forStep = toolsForStep(d.state.job, currentStep(d.state.job), cabinet, env.now);
    expect(forStep?.usable.map((one) => one.tool.id)).toEqual(['click']);
    const turned = kioskTransition(
      d.state,
      { kind: 'act', intent: { kind: 'value', value: 6 }, via: { by: 'touch' } },
      { ...env, cabinet },
    );
    expect(turned.state.job.readings.at(-1)?.tool?.id).toBe('dial');
  });
});
