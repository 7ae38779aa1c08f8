import { readFileSync } from 'node:fs';
import { parseScript, type ScriptLine } from '@/demo/script';

/** The whole job as it is spoken. */
export const spokenJob: readonly ScriptLine[] = parseScript(
  readFileSync(new URL('../../../demo/voices/whole-job.tsv', import.meta.url), 'utf8'),
);

const byHand = (say: string, line: ScriptLine): ScriptLine => ({ ...line, say, then: [] });

/**
 * The same job by hand. A spoken value may contradict one that stands and is then asked back; the value pad is for
 * what is still wanted, so a hand takes the old value back first. What is stored is the same.
 */
export const jobByHand: readonly ScriptLine[] = spokenJob.flatMap((line, index) => {
  const before = spokenJob[index - 1];
  if (line.say === 'one eighty two')
    return [
      byHand('take that back', line),
      { ...byHand('yes', line), then: ['entryWithdrawn'] },
      { ...line, then: ['readingTaken crank-final-torque 182 N.m'] },
    ];
  return before?.say === 'one eighty two' ? [] : [line];
});
