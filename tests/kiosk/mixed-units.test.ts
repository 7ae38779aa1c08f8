import { describe, expect, test } from 'vitest';
import type { Specification } from '@/lib/fastening';
import { openJob } from '@/lib/job';
import { openKiosk, voiceContext } from '@/lib/kiosk';
import { revisionSchema } from '@/lib/procedure';
import type { Unit } from '@/lib/quantity';
import { understand } from '@/lib/voice';
import { Driver } from './driver';
import { openedEvent, tinyCover } from './tiny-cover';

/** The tiny cover at its bolts, to be tightened to `target` ± `tolerance`. */
const atBolts = (target: number, tolerance: number, unit: Unit): Driver => {
  const torque: Specification = {
    kind: 'target',
    unit,
    target,
    tolerance: { in: 'unit', plus: tolerance, minus: tolerance },
  };
  const revision = revisionSchema.parse({
    ...tinyCover,
    groups: tinyCover.groups.map((group) => ({
      ...group,
      thread: 'M12',
      passes: [{ id: 'final', stage: 'final', tightening: { kind: 'torque', torque } }],
    })),
  });
  const job = openJob(revision, openedEvent);
  if (!job.ok) throw new Error(job.error.message);
  const driver = new Driver();
  driver.state = openKiosk(job.value);
  return driver.toTighten();
};

/** Clearly spoken words, as the ears hand them on. */
const hear = (driver: Driver, text: string): Driver => {
  const words = text
    .split(' ')
    .map((word, at) => ({ text: word, confidence: 1, startS: at * 0.4, endS: at * 0.4 + 0.3 }));
  const understood = understand({ text, words }, voiceContext(driver.state));
  if (understood.kind === 'nothing') throw new Error(understood.why);
  const { intent, confidence, certainty } = understood;
  return driver.input({
    kind: 'act',
    intent,
    via: { by: 'voice', said: text, confidence, certainty },
  });
};

describe('a torque heard as the figure of another unit is asked back and named', () => {
  test.each<readonly [string, number, number, Unit, string]>([
    // NIST SP 811: 1 lbf·ft = 1.355818 N·m, 1 lbf·in = 0.1129848 N·m, 1 kgf·m = 9.80665 N·m.
    ['torqued eighty eight', 120, 12, 'N.m', '88 is the lbf·ft figure; 119 N·m?'],
    ['eighty eight', 10, 1, 'N.m', '88 is the lbf·in figure; 9.9 N·m?'],
    ['torqued ten', 98, 1, 'N.m', '10 is the kgf·m figure; 98.1 N·m?'],
    ['torqued forty five', 33, 3, '[lbf_av].[ft_i]', '45 is the N·m figure; 33.2 lbf·ft?'],
    ['bolt one torqued ten', 90, 8, '[lbf_av].[in_i]', '10 is the N·m figure; 89 lbf·in?'],
    ['one eighteen', 12, 0.5, 'kgf.m', '118 is the N·m figure; 12.0 kgf·m?'],
  ])('“%s” where %d ± %d %s is wanted', (words, target, tolerance, unit, named) => {
    const d = atBolts(target, tolerance, unit);
    const before = d.stored.length;
    hear(d, words);
    expect(d.state.question).toMatchObject({ kind: 'value', draft: { verdict: 'outOfSpec' } });
    expect(d.state.outcome?.figure?.sentence).toContain(
      `${named} If so, answer no and give it with its unit.`,
    );
    expect(d.stored).toHaveLength(before);
  });
});

describe('a torque heard with another unit than the sheet’s', () => {
  test.each<readonly [string, number, number, Unit, string]>([
    ['eighty eight foot pounds', 120, 12, 'N.m', '88 lbf·ft? said in lbf·ft'],
    ['ninety inch pounds', 10, 1, 'N.m', '90 lbf·in? said in lbf·in'],
    ['one hundred and eighteen newton meters', 12, 0.5, 'kgf.m', '118 N·m? said in N·m'],
  ])('“%s” for %d ± %d %s is asked back, and a yes stores it as said', (...of) => {
    const [words, target, tolerance, unit, question] = of;
    const d = atBolts(target, tolerance, unit);
    const before = d.stored.length;
    hear(d, words);
    expect(d.text).toBe(`Cover bolt 1: ${question}`);
    expect(d.stored).toHaveLength(before);
    hear(d, 'yes');
    expect(d.stored.slice(before)).toEqual(['readingTaken']);
    expect(d.state.job.readings.at(-1)).toMatchObject({ verdict: 'inSpec' });
  });
});
