import { describe, expect, test } from 'vitest';
import {
  filterOf,
  jointName,
  jointShown,
  procedureShown,
  reviewAddress,
  timelineAddress,
} from '@/components/review/address';
import type { Joint, ReviewChoices } from '@/lib/review';

const joints: readonly Joint[] = [
  { procedure: 'lid', ask: 'gap', name: 'Gap' },
  { procedure: 'lid', ask: 'tighten', fastener: 'bolt-1', name: 'Bolt 1' },
  { procedure: 'lid', ask: 'tighten', fastener: 'bolt-2', name: 'Bolt 2' },
];

const choices: ReviewChoices = {
  bays: [{ id: 'bay-1', name: 'Bay 1' }],
  shifts: [],
  timeZone: 'UTC',
  today: '2026-03-31',
  procedures: [
    {
      procedure: 'lid',
      title: 'Lid',
      revisions: [2, 1],
      steps: [{ step: 'open', number: 1, title: 'Open the lid' }],
      joints,
    },
    { procedure: 'hub', title: 'Hub', revisions: [1], steps: [], joints: [] },
  ],
};

const lastFourWeeks = { from: '2026-03-04', to: '2026-03-31' };

describe('what an address asks to see', () => {
  test('is the last four weeks, where it says nothing', () => {
    expect(filterOf({}, choices)).toEqual({ filter: lastFourWeeks });
    expect(filterOf({ bay: '', shift: ' ', step: '' }, choices)).toEqual({ filter: lastFourWeeks });
  });

  test('is what the form sends', () => {
    const { filter } = filterOf(
      {
        from: '2026-03-01',
        to: '2026-03-02',
        bay: 'bay-1',
        shift: 'early',
        role: 'mechanic',
        procedure: 'lid',
        revision: '2',
        step: 'open',
        joint: 'tighten/bolt-2',
      },
      choices,
    );
    expect(filter).toEqual({
      from: '2026-03-01',
      to: '2026-03-02',
      bay: 'bay-1',
      shift: 'early',
      role: 'mechanic',
      procedure: 'lid',
      revision: 2,
      step: 'open',
      ask: 'tighten',
      fastener: 'bolt-2',
    });
  });

  test('forgets the step of one procedure when another is chosen', () => {
    const asked = { procedure: 'hub', revision: '2', step: 'open', joint: 'gap' };
    expect(filterOf(asked, choices).filter).toEqual({ ...lastFourWeeks, procedure: 'hub' });
    const none = { procedure: '', revision: '2', step: 'open', ask: 'gap' };
    expect(filterOf(none, choices).filter).toEqual(lastFourWeeks);
  });

  test.each([
    { from: '2026-03-05', to: '2026-03-01' },
    { from: 'yesterday' },
    { role: 'king' },
    { bay: '../x' },
  ])('is the last four weeks and a sentence, where it cannot be: %o', (address) => {
    const { filter, problem } = filterOf(address, choices);
    expect(filter).toEqual(lastFourWeeks);
    expect(problem).toMatch(/^This cannot be shown: /);
  });

  test('comes back from the address that is made of it', () => {
    const { filter } = filterOf(
      { procedure: 'lid', revision: '1', joint: 'tighten/bolt-1', bay: 'bay-1' },
      choices,
    );
    const { searchParams, hash, pathname } = new URL(reviewAddress(filter, 'readings'), 'http://x');
    expect([pathname, hash]).toEqual(['/review', '#readings']);
    expect(filterOf(Object.fromEntries(searchParams), choices)).toEqual({ filter });
  });
});

test('the sections of one procedure show what the filter names, else what was asked for, else the first', () => {
  const of = (procedure?: string, sheet?: string) =>
    procedureShown({ ...lastFourWeeks, procedure }, { sheet }, choices)?.procedure;
  expect([of(), of(undefined, 'hub'), of('lid', 'hub'), of(undefined, 'gone')]).toEqual([
    'lid',
    'hub',
    'lid',
    'lid',
  ]);
});

test('the chart shows the joint of the filter, else the one asked for, else the first', () => {
  const of = (more: { ask?: string; fastener?: string }, chart?: string) => {
    const joint = jointShown({ ...lastFourWeeks, ...more }, { chart }, joints);
    return joint && jointName(joint);
  };
  expect(of({})).toBe('gap');
  expect(of({}, 'tighten/bolt-2')).toBe('tighten/bolt-2');
  expect(of({ ask: 'tighten', fastener: 'bolt-1' }, 'gap')).toBe('tighten/bolt-1');
  expect(of({ ask: 'tighten' })).toBe('tighten/bolt-1');
  expect(jointShown(lastFourWeeks, {}, [])).toBeUndefined();
});

test('a click leads to the job as it stood at that event', () => {
  expect(timelineAddress({ job: 'a', seq: 12 })).toBe('/jobs/a?at=12');
});
