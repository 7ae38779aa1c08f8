import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { applyEvent, openJob, type JobEvent, type JobState } from '@/lib/job';
import type { Revision } from '@/lib/procedure';
import { projectEvent, type ReviewWrite } from '@/lib/review';
import { Bay } from '../job/driver';
import { workOff } from '../job/hands';
import { hatchJob, lidJob } from '../job/lid-procedure';
import { nutJob } from '../job/nut-procedure';
import { throwsOfDice, walk } from '../job/walk';

vi.setConfig({ testTimeout: 120_000 });

interface Told {
  readonly writes: readonly ReviewWrite[];
  readonly states: readonly JobState[];
}

/** What a log writes, and every state on the way. */
const told = (revision: Revision, log: readonly JobEvent[]): Told => {
  const writes: ReviewWrite[] = [];
  const states: JobState[] = [];
  for (const event of log) {
    const before = states.at(-1);
    const after = before === undefined ? openJob(revision, event) : applyEvent(before, event);
    if (!after.ok) throw new Error(after.error.message);
    writes.push(...projectEvent(before, after.value, event));
    states.push(after.value);
  }
  return { writes, states };
};

type Kind = ReviewWrite['kind'];
const of = <K extends Kind>(writes: readonly ReviewWrite[], kind: K) =>
  writes.filter((write): write is Extract<ReviewWrite, { kind: K }> => write.kind === kind);

const jobs: readonly (readonly [string, Revision])[] = [
  ['the lid job', lidJob],
  ['the hatch job', hatchJob],
  ['the hatch job on self-locking nuts', nutJob()],
];

describe.each(jobs)('whatever happens in %s, the review has', (_, revision) => {
  const always = (check: (told: Told, log: readonly JobEvent[]) => void): void => {
    fc.assert(
      fc.property(throwsOfDice(70), (dice) => {
        const { log } = walk(revision, dice);
        check(told(revision, log), log);
      }),
      { numRuns: 30 },
    );
  };

  test('every deviation of the job once, with the foreman’s word on it', () => {
    always(({ writes, states }) => {
      const end = states.at(-1);
      const rows = of(writes, 'deviation').map(({ row }) => [row.id, row.kind, row.step]);
      expect(rows).toEqual(end?.deviations.map(({ id, kind, step }) => [id, kind, step]));
      const words = of(writes, 'decided').map(({ id, word }) => [id, word]);
      const decided = end?.deviations.flatMap(({ id, decision }) =>
        decision === undefined ? [] : [[id, decision.word] as const],
      );
      expect(new Map(words as [string, string][])).toEqual(new Map(decided));
    });
  });

  test('every reading that ever counted, once, also where its step was opened again', () => {
    always(({ writes, states }) => {
      const everCounted = new Set(
        states.flatMap(({ readings }) =>
          readings.flatMap(({ seq, status }) => (status === 'counted' ? [seq] : [])),
        ),
      );
      const rows = of(writes, 'reading').map(({ row }) => row.seq);
      expect(rows).toHaveLength(everCounted.size);
      expect(new Set(rows)).toEqual(everCounted);
    });
  });

  test('the first time that each step was done, and never a time below zero', () => {
    always(({ writes, states }) => {
      const everDone = new Set(
        states.flatMap(({ steps }) =>
          Object.entries(steps).flatMap(([id, { status }]) => (status === 'done' ? [id] : [])),
        ),
      );
      const rows = of(writes, 'step').map(({ row }) => row);
      // A step that was left out first and opened again is done in the course of a rework.
      expect(rows.every(({ step }) => everDone.has(step))).toBe(true);
      expect(new Set(rows.map(({ step }) => step)).size).toBe(rows.length);
      for (const { minutes } of rows) expect(minutes).toBeGreaterThanOrEqual(0);
    });
  });

  test('a rework for each reopening, and it stands open just as long as its step does', () => {
    always(({ writes, states }, log) => {
      const end = states.at(-1);
      const open = new Map<string, string>();
      for (const write of writes) {
        if (write.kind === 'rework') open.set(write.row.step, 'stillOpen');
        if (write.kind === 'followed' && open.get(write.step) === write.from)
          open.set(write.step, write.to);
      }
      expect(of(writes, 'rework')).toHaveLength(
        log.filter(({ happening }) => happening.type === 'stepReopened').length,
      );
      for (const [step, followed] of open)
        if (followed === 'stillOpen') expect(end?.steps[step]?.status).toBe('open');
        else if (followed === 'leftOut') expect(end?.steps[step]?.status).not.toBe('done');
    });
  });

  test('a hold for each hold, ended by each resuming', () => {
    always(({ writes, states }) => {
      const holding = of(writes, 'hold').length - of(writes, 'resumed').length;
      expect(holding).toBe(states.at(-1)?.phase === 'held' ? 1 : 0);
    });
  });
});

describe('a step that is opened again', () => {
  test('tells who sent it back, how many steps fell with it, and how long it took again', () => {
    const bay = new Bay(lidJob);
    workOff(bay);
    const step = bay.state.revision.steps.find(({ id }) => bay.state.steps[id]?.status === 'done');
    if (step === undefined) throw new Error('nothing is done');
    const deviation = bay.does({
      type: 'deviationNoted',
      kind: 'anotherWay',
      step: step.id,
      reason: { text: 'did it from below' },
    });
    bay.does(
      { type: 'deviationDecided', deviation, decision: 'rework', reason: { text: 'again' } },
      'fay',
    );
    bay.does({ type: 'stepReopened', step: step.id, reason: { text: 'sent back' } });
    const { writes } = told(lidJob, bay.log);
    const [rework] = of(writes, 'rework');
    expect(rework?.row.facts.sentBack).toBe('anotherWay');
    expect(rework?.row.facts.why).toEqual({ text: 'sent back', spoken: false });
    const open = Object.values(bay.state.steps).filter(({ status }) => status === 'open').length;
    expect(rework?.row.facts.steps).toBe(open);
  });
});
