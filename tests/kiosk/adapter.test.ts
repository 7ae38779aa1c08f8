import { describe, expect, test } from 'vitest';
import type { Adapter } from '@/lib/fastening';
import {
  actForKey,
  currentStep,
  kioskTransition,
  setOnWrench,
  toolsForStep,
  wrenchesForAdapter,
  type KioskState,
  type ToolCabinet,
} from '@/lib/kiosk';
import type { TorqueTool } from '@/lib/shop';
import { Driver } from './driver';
import { env } from './tiny-cover';

/** 10 N·m are wanted; with this on the wrench 8 are set. */
const quarter: Adapter = { wrenchMm: 200, adapterMm: 50, angleDeg: 0 };
const inUse = { name: 'Crowfoot', adapter: quarter };

const touch = { by: 'touch' } as const;
const withAdapter = (): Driver =>
  new Driver().toTighten().input({ kind: 'adapter', inUse, via: touch });

const tool = (id: string, more: Partial<TorqueTool>): TorqueTool => ({
  id,
  name: id,
  kind: 'click',
  driveIn: '3/8',
  lowerNm: 5,
  upperNm: 25,
  resolutionNm: 0.1,
  calibration: { on: '2026-01-10', expandedPercent: 2, intervalMonths: 12, intervalCycles: 5000 },
  ...more,
});
/** Good to 9 N·m: too small for 10, right for 8. */
const small = tool('small', { lowerNm: 1, upperNm: 9, effectiveLengthMm: 200 });
const wide = tool('wide', { effectiveLengthMm: 250 });
const square = tool('square', { driveIn: '1/2', effectiveLengthMm: 250 });
const cabinet: ToolCabinet = { tools: [small, wide, square], cycles: {} };

const stepOf = ({ job }: KioskState) => currentStep(job);

describe('an adapter on the wrench', () => {
  test('is asked for by touch or the key E in a step that tightens, and nowhere else', () => {
    expect(actForKey(new Driver().state, 'e')).toBeUndefined();
    const d = new Driver().toTighten();
    expect(actForKey(d.state, 'e')?.label).toBe('Adapter');
    expect(d.say({ kind: 'show', what: 'adapter' }).state.view).toBe('adapter');
  });

  test('has the value judged at the fastener, with what is accepted on the wrench', () => {
    const d = withAdapter().value(8);
    expect(d.state.question).toBeUndefined();
    expect(d.state.job.readings.at(-1)).toMatchObject({
      value: 8,
      canonical: 10,
      verdict: 'inSpec',
      adapter: quarter,
    });
    expect(d.state.outcome?.figure?.sentence).toMatch(/^At the fastener 10 N·m is within/);
    expect(d.state.outcome?.figure?.label).toContain('on the wrench');
  });

  test('has the sheet’s own figure asked back, naming what to set', () => {
    const d = withAdapter().value(10);
    expect(d.state.question?.kind).toBe('value');
    expect(d.state.outcome?.figure?.sentence).toContain(
      'That is the figure without the adapter: with it set 8 N·m.',
    );
  });

  test('makes the same number another torque: given again without, it is asked back', () => {
    const d = withAdapter().value(8);
    d.input({ kind: 'adapter', inUse: undefined, via: touch });
    const first = d.state.job.readings.at(-1)?.fastener;
    const label = d.state.job.revision.groups
      .flatMap(({ fasteners }) => fasteners)
      .find(({ id }) => id === first)?.label;
    d.value(8, label === undefined ? {} : { label });
    expect(d.state.question).toMatchObject({
      kind: 'value',
      oddities: expect.arrayContaining([{ kind: 'contradicts', earlier: '8 N·m' }]) as unknown,
    });
  });

  test('is forgotten when another step is shown, and not before', () => {
    const d = withAdapter().value(8).say({ kind: 'show', what: 'parts' });
    expect(d.state.adapter?.name).toBe('Crowfoot');
    d.say({ kind: 'goTo', step: 1 });
    expect(d.state.adapter).toBeUndefined();
  });

  test('is settled before a value is taken, so that no value is meant both ways', () => {
    const d = new Driver().toTighten();
    const before = d.state.job.readings;
    d.say({ kind: 'show', what: 'adapter' }).value(10);
    expect(d.state.job.readings).toEqual(before);
    expect(d.text).toBe('First choose the adapter, or go back to the step');
  });

  test('has its tool chosen by what is set on it', () => {
    const { state } = withAdapter();
    const without = toolsForStep(state.job, stepOf(state), cabinet, env.now);
    expect(without?.usable.map((one) => one.tool.id)).toEqual(['wide', 'square']);
    const choice = toolsForStep(state.job, stepOf(state), cabinet, env.now, inUse);
    expect(choice?.usable.map((one) => one.tool.id)).toContain('small');
    const on = { ...inUse, tool: 'wide', driveIn: '3/8' } as const;
    const chosen = toolsForStep(state.job, stepOf(state), cabinet, env.now, on);
    expect(chosen?.usable.map((one) => one.tool.id)).toEqual(['wide']);
    const stored = kioskTransition(
      withAdapter().state,
      { kind: 'act', intent: { kind: 'value', value: 8 }, via: touch },
      { ...env, cabinet },
    ).state.job.readings.at(-1);
    expect(stored?.tool?.id).toBe('small');
  });

  test('tells for each wrench of the shop what to set on it, and why not', () => {
    const all = wrenchesForAdapter(10, { adapterMm: 50, angleDeg: 0 }, '3/8', cabinet, env.now);
    expect(all.map(({ id, setNm, admitted }) => [id, setNm, admitted.ok])).toEqual([
      ['small', 8, true],
      ['wide', 10 / 1.2, true],
      ['square', 10 / 1.2, false],
    ]);
  });

  test('is shown with its formula and lengths', () => {
    const sheet = {
      kind: 'target',
      unit: 'N.m',
      target: 10,
      tolerance: { in: 'unit', plus: 1, minus: 1 },
    } as const;
    expect(setOnWrench(sheet, inUse)).toEqual({
      name: 'Crowfoot',
      torqueNm: 8,
      window: { lower: 7.2, upper: 8.8, target: 8 },
      explain:
        'T set = T × L ÷ (L + E × cos θ) = 10 N·m × 200 mm ÷ (200 mm + 50 mm × cos 0°) = 8 N·m',
    });
  });
});

describe('the square drive of the sheet', () => {
  test('refuses a wrench with another, and says so', () => {
    const d = new Driver().toTighten();
    const group = d.state.job.revision.groups[0];
    if (group === undefined) throw new Error('the example has changed');
    const job = {
      ...d.state.job,
      revision: { ...d.state.job.revision, groups: [{ ...group, driveIn: '1/2' as const }] },
    };
    const choice = toolsForStep(job, currentStep(job), cabinet, env.now);
    expect(choice?.usable.map((one) => one.tool.id)).toEqual(['square']);
    expect(choice?.refused.map(({ why }) => why.message)).toContain(
      'wide has a 3/8 in drive; 1/2 in is needed.',
    );
  });
});

describe('a wrench marked in another unit than the sheet', () => {
  const pounds = tool('pounds', { scale: ['[lbf_av].[ft_i]'] });
  const usable = (settings?: ToolCabinet['settings']) => {
    const { job } = new Driver().toTighten().state;
    const shop = { tools: [pounds], cycles: {}, ...(settings === undefined ? {} : { settings }) };
    return toolsForStep(job, currentStep(job), shop, env.now);
  };

  test('may be used, since the screen shows both units', () => {
    expect(usable()?.usable).toHaveLength(1);
  });

  test('is refused where the shop wants it so', () => {
    expect(usable({ toolsMarkedInSheetUnit: true })?.refused[0]?.why.message).toBe(
      'pounds is marked in lbf·ft, not in N·m.',
    );
  });
});
