import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { applyEvent, jobEventSchema, replay, type JobState } from '@/lib/job';
import { looseEnds, mayClose, unsigned } from '@/lib/ledger';
import type { Revision } from '@/lib/procedure';
import { piecesTaken } from '../ledger/oracle';
import { Bay, event, frozen } from './driver';
import { workOff } from './hands';
import { hatchJob, lidJob } from './lid-procedure';
import { nutJob } from './nut-procedure';
import { happeningOf, throwsOfDice, walk } from './walk';

// Walks are long and machines may be busy; how fast they are is not what is tested.
vi.setConfig({ testTimeout: 120_000 });

const jobs: readonly (readonly [string, Revision])[] = [
  ['the lid job', lidJob],
  ['the hatch job', hatchJob],
  ['the hatch job on self-locking nuts', nutJob()],
];
const runs = { numRuns: 30 };

describe.each(jobs)('whatever happens in %s', (_, revision) => {
  test('no piece of the kit is counted twice', () => {
    fc.assert(
      fc.property(throwsOfDice(60), (dice) => {
        walk(revision, dice, ({ state, log }) => {
          for (const { id, quantity } of revision.kit) {
            const { used, leftOver, extra } = state.kit[id] ?? { used: -1, leftOver: 0, extra: 0 };
            expect(Math.min(used, leftOver, extra)).toBeGreaterThanOrEqual(0);
            expect(used + leftOver).toBeLessThanOrEqual(quantity);
            expect(used + extra).toBe(piecesTaken(revision, log, id));
            if (extra > 0) expect(used).toBe(quantity);
          }
        });
      }),
      runs,
    );
  });

  test('a fastener lies somewhere only while it is off, and a part on the vehicle lies nowhere', () => {
    fc.assert(
      fc.property(throwsOfDice(60), (dice) => {
        const { state } = walk(revision, dice);
        for (const fastener of Object.values(state.fasteners))
          if (fastener.lies !== undefined) expect(fastener.stage).toBe('off');
        for (const part of Object.values(state.parts)) {
          if (part.where === 'on') expect(part.tray).toBeUndefined();
          if (part.where === 'off') expect(part.fitted).toBeUndefined();
        }
      }),
      runs,
    );
  });

  test('for one ask and fastener at most one entry stands, and it counts just while its step is done', () => {
    fc.assert(
      fc.property(throwsOfDice(60), (dice) => {
        const { state } = walk(revision, dice);
        const standing = [...state.readings, ...state.answers].filter(
          ({ status }) => status === 'provisional' || status === 'counted',
        );
        const places = standing.map((one) =>
          [one.step, one.ask, 'fastener' in one ? one.fastener : ''].join(' '),
        );
        expect(new Set(places).size).toBe(places.length);
        for (const { step, status } of standing)
          expect(state.steps[step]?.status).toBe(status === 'counted' ? 'done' : 'open');
      }),
      runs,
    );
  });

  test('replaying the log makes the same state as applying its events one by one', () => {
    fc.assert(
      fc.property(throwsOfDice(60), (dice) => {
        const { state, log } = walk(revision, dice);
        const stored: unknown = JSON.parse(JSON.stringify(log));
        const parsed = jobEventSchema.array().parse(stored);
        expect(replay(revision, parsed)).toStrictEqual({ ok: true, value: state });
      }),
      runs,
    );
  });

  test('the state survives being stored as JSON, and goes on from there alike', () => {
    fc.assert(
      fc.property(throwsOfDice(60), throwsOfDice(8), (dice, rest) => {
        const bay = walk(revision, dice);
        // The store gives back what it was given; what JSON would lose shows as a difference.
        const restored = JSON.parse(JSON.stringify(bay.state)) as JobState;
        expect(restored).toStrictEqual(bay.state);
        for (const one of rest) {
          const next = event(bay.state.seq + 1, happeningOf(bay, one), one.actor);
          expect(applyEvent(restored, next)).toStrictEqual(applyEvent(bay.state, next));
        }
      }),
      runs,
    );
  });

  test('a refused event leaves everything as it was and says why', () => {
    fc.assert(
      fc.property(throwsOfDice(60), (dice) => {
        let before: JobState | undefined;
        let text = '';
        walk(revision, dice, (bay, _happening, accepted) => {
          if (!accepted && before !== undefined) {
            expect(bay.state).toBe(before);
            expect(JSON.stringify(bay.state)).toBe(text);
          }
          before = bay.state;
          text = JSON.stringify(bay.state);
        });
      }),
      runs,
    );
  });

  test('an event that was applied, or left one out, is refused for its number', () => {
    fc.assert(
      fc.property(throwsOfDice(40), fc.integer({ min: 1, max: 60 }), (dice, seq) => {
        const { state } = walk(revision, dice);
        const after = applyEvent(state, event(seq, { type: 'foremanCalled' }));
        if (seq === state.seq + 1) return;
        expect(after).toMatchObject({ ok: false, error: { code: 'sequence' } });
      }),
      runs,
    );
  });

  test('nobody who worked on it has signed, and a closed job has nothing unsigned', () => {
    fc.assert(
      fc.property(throwsOfDice(60), (dice) => {
        walk(revision, dice, ({ state }, happening, accepted) => {
          for (const { by } of state.signatures) {
            expect(['fay', 'fred']).toContain(by);
            expect(state.workers).not.toContain(by);
          }
          if (accepted && happening.type === 'jobClosed') expect(unsigned(state)).toEqual([]);
          expect(mayClose(state)).toBe(state.phase === 'running' && unsigned(state).length === 0);
        });
      }),
      runs,
    );
  });

  test('a foreman who worked on it is refused every signature and decision', () => {
    fc.assert(
      fc.property(throwsOfDice(60), fc.nat(), (dice, which) => {
        const { state } = walk(revision, dice);
        if (state.phase === 'closed' || !state.workers.includes('fay')) return;
        const ends = looseEnds(state);
        const end = ends[which % Math.max(1, ends.length)];
        const sign = event(
          state.seq + 1,
          {
            type: 'looseEndSigned',
            looseEnd: end?.key ?? '',
            mark: end?.mark ?? '',
            reason: { text: 'mine' },
          },
          'fay',
        );
        expect(applyEvent(state, sign)).toMatchObject({ ok: false, error: { code: 'ownWork' } });
      }),
      runs,
    );
  });

  test('time spent is never negative, even when clocks jump', () => {
    const hours = fc.array(fc.integer({ min: 0, max: 23 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(hours, (times) => {
        const bay = new Bay(revision);
        let { state } = bay;
        times.forEach((hour, n) => {
          const step = revision.steps[n % revision.steps.length]?.id ?? '';
          const begun = frozen({
            ...event(state.seq + 1, { type: 'stepBegun', step }),
            at: `2026-03-02T${String(hour).padStart(2, '0')}:00:00Z`,
          });
          const after = applyEvent(state, begun);
          if (after.ok) state = after.value;
        });
        expect(state.seq).toBe(times.length + 1);
        for (const { spentMs } of Object.values(state.steps))
          expect(spentMs).toBeGreaterThanOrEqual(0);
      }),
      runs,
    );
  });
});

describe.each(jobs)('after whatever happened, %s', (_, revision) => {
  test('can be worked off by what the ledger says, and closed without a signature', () => {
    fc.assert(
      fc.property(throwsOfDice(60), (dice) => {
        const workers = dice.map((one) => ({ ...one, actor: 'mia' as const }));
        const bay = walk(revision, workers);
        if (bay.state.phase === 'closed') return;
        workOff(bay);
        expect(looseEnds(bay.state)).toEqual([]);
        bay.does({ type: 'jobClosed' });
        expect(bay.state.phase).toBe('closed');
      }),
      { numRuns: 30 },
    );
  });
});
