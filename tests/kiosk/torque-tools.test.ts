import { describe, expect, test } from 'vitest';
import { kioskTransition, openKiosk, toolsForStep, type ToolCabinet } from '@/lib/kiosk';
import { openJob } from '@/lib/job';
import { revisionSchema } from '@/lib/procedure';
import type { TorqueTool } from '@/lib/shop';
import { Driver } from './driver';
import { env, openedEvent, tinyCover } from './tiny-cover';

const tool = (id: string, more: Partial<TorqueTool> = {}): TorqueTool => ({
  id,
  name: id,
  kind: 'click',
  driveIn: '1/4',
  lowerNm: 5,
  upperNm: 25,
  resolutionNm: 0.1,
  calibration: {
    on: '2026-01-10',
    certificate: 'C-1',
    expandedPercent: 2,
    intervalMonths: 12,
    intervalCycles: 5000,
  },
  ...more,
});
const fine = tool('fine', { calibration: { ...tool('x').calibration, expandedPercent: 1 } });
const coarse = tool('coarse');
const expired = tool('expired', {
  calibration: { ...fine.calibration, on: '2024-12-01', expandedPercent: 0.5 },
});
const large = tool('large', { lowerNm: 40, upperNm: 200 });
const cabinet: ToolCabinet = { tools: [coarse, expired, large, fine], cycles: {} };

const atTighten = (critical: boolean) => {
  const [group] = tinyCover.groups;
  const revision = revisionSchema.parse({
    ...tinyCover,
    groups: [{ ...group, safetyCritical: critical }],
  });
  const job = openJob(revision, openedEvent);
  if (!job.ok) throw new Error(job.error.message);
  const driver = new Driver();
  driver.state = openKiosk(job.value);
  return driver.toTighten().state;
};

const said = (critical: boolean, value: number, tools = cabinet) =>
  kioskTransition(
    atTighten(critical),
    {
      kind: 'act',
      intent: { kind: 'value', value },
      via: { by: 'voice', said: '', confidence: 1, certainty: 'sure' },
    },
    { ...env, cabinet: tools },
  ).state;

describe('the torque tool of a step', () => {
  test('is the one with the smallest uncertainty that fits, in range and in date', () => {
    const { job } = atTighten(false);
    const step = job.revision.steps.find(({ id }) => id === 'tighten');
    if (step === undefined) throw new Error('no such step');
    const choice = toolsForStep(job, step, cabinet, env.now);
    expect(choice?.usable.map((one) => one.tool.id)).toEqual(['fine', 'coarse']);
    expect(choice?.refused.map((one) => [one.tool.id, one.why.kind])).toEqual([
      ['expired', 'expired'],
      ['large', 'belowRange'],
    ]);
  });

  test('is stored with the reading, and how far it may be off there', () => {
    const reading = said(false, 10.2).job.readings.at(-1);
    expect(reading?.tool?.id).toBe('fine');
    // JCGM 100 §5.1.2: 2·√((1 % · 10.2 / 2)² + (0.05/√3)²)
    expect(reading?.tool?.expandedUncertainty).toBeCloseTo(
      2 * Math.hypot(0.051, 0.05 / Math.sqrt(3)),
      9,
    );
  });

  test('that is used up is not chosen', () => {
    const used: ToolCabinet = { ...cabinet, cycles: { fine: 5000 } };
    expect(said(false, 10.2, used).job.readings.at(-1)?.tool?.id).toBe('coarse');
  });

  test('decides whether a safety-critical reading near the limit can be proven', () => {
    expect(said(true, 10.2).job.readings.at(-1)?.verdict).toBe('inSpec');
    const near = said(true, 10.95).job.readings.at(-1);
    expect(near?.verdict).toBe('notProvable');
    expect(said(false, 10.95).job.readings.at(-1)?.verdict).toBe('inSpec');
  });

  test('where the shop has none that fits, a safety-critical reading proves nothing', () => {
    const none: ToolCabinet = { tools: [large], cycles: {} };
    expect(said(true, 10, none).job.readings.at(-1)?.verdict).toBe('notProvable');
    expect(said(true, 10, none).job.readings.at(-1)?.tool).toBeUndefined();
  });
});
