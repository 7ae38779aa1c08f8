import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { frontCover } from '@/demo/procedures/front-cover';
import { parseScript } from '@/demo/script';
import { looseEnds } from '@/lib/ledger';
import { SpokenJob } from './spoken-job';

const folder = new URL('../../demo/voices/', import.meta.url);
const read = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const script = parseScript(read('whole-job.tsv'));
const stored = script.flatMap(({ then }) => then);

describe('the whole job as a script', () => {
  test('closes the job, and every line stores what the script says while its step is shown', () => {
    const job = new SpokenJob();
    for (const line of script) {
      expect([line.say, job.state.job.currentStep]).toEqual([line.say, line.step]);
      expect([line.say, ...job.take(line)]).toEqual([line.say, ...line.then]);
    }
    expect(job.state.job.phase).toBe('closed');
    expect(looseEnds(job.state.job)).toEqual([]);
  });

  test('does every step of the procedure', () => {
    const done = stored.filter((text) => text.startsWith('stepDone '));
    expect(new Set(done)).toEqual(new Set(frontCover.steps.map(({ id }) => `stepDone ${id}`)));
  });

  test('holds one value taken back and said anew', () => {
    const at = script.findIndex(({ say }) => say === 'take that back');
    expect(script.slice(at - 1, at + 3).map(({ say, then }) => [say, ...then])).toEqual([
      ['seven point nine liters', 'readingTaken coolant-drained 7.9 L'],
      ['take that back'],
      ['yes', 'entryWithdrawn'],
      ['eight point four liters', 'readingTaken coolant-drained 8.4 L'],
    ]);
  });

  test('holds one value out of spec that is let stand and then corrected', () => {
    const at = script.findIndex(({ say }) => say === 'one hundred and sixty');
    expect(script.slice(at, at + 4).map(({ say, then }) => [say, ...then])).toEqual([
      ['one hundred and sixty'],
      ['yes', 'readingTaken crank-final-torque 160 N.m'],
      ['one eighty two'],
      ['yes', 'entryWithdrawn', 'readingTaken crank-final-torque 182 N.m'],
    ]);
  });

  test('holds one value out of spec that is not let stand', () => {
    const at = script.findIndex(({ say }) => say === 'twenty six');
    expect(script.slice(at, at + 3).map(({ say, then }) => [say, ...then])).toEqual([
      ['twenty six'],
      ['no'],
      ['twenty three point five', 'readingTaken cover-torque cover-1 23.5 N.m'],
    ]);
  });

  test('holds a deviation note, a rework, a reuse with its reason and a kit item left over', () => {
    expect(stored).toContain('deviationNoted anotherWay');
    expect(stored).toContain('stepReopened pump-tight');
    expect(stored).toContain('answerGiven gasket-choice reused');
    expect(stored).toContain('kitLeftOver gasket 1');
    expect(stored.filter((text) => text === 'stepDone pump-tight')).toHaveLength(2);
  });

  test('takes each reading with a figure of its own', () => {
    const figures = stored
      .filter((text) => text.startsWith('readingTaken '))
      .map((text) => text.split(' ').slice(-2).join(' '));
    expect(new Set(figures).size).toBe(figures.length);
    expect(figures).toHaveLength(31);
  });
});
