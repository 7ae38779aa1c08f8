import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cardsInOrder,
  emptyWall,
  freshness,
  hearMessage,
  parsePosition,
  pauseBeforeMs,
  positionText,
  stalledAfterMs,
  type BayCard,
  type WallMessage,
  type WallState,
} from '@/lib/wall';
import { cardOf, underWay } from './shop-floor';

const at = (ms: number): string => new Date(ms).toISOString();
const noon = Date.parse('2026-03-02T12:00:00Z');

const bay = (id: string, plate?: string): BayCard => {
  const card = cardOf(underWay().state);
  return {
    ...card,
    bay: { id, name: id },
    ...(card.job === undefined || plate === undefined ? {} : { job: { ...card.job, plate } }),
  };
};

const whole = (ids: readonly string[], ms = noon): WallMessage => ({
  kind: 'whole',
  now: at(ms),
  shop: 'Test shop',
  order: [...ids],
  bays: ids.map((id) => bay(id)),
});

const plates = (state: WallState) => cardsInOrder(state).map(({ job }) => job?.plate);

describe('a wall', () => {
  test('shows the bays in the order of the shop, and takes over those that changed', () => {
    const first = hearMessage(emptyWall, whole(['b', 'a']), 'run-1', noon);
    expect(cardsInOrder(first).map((card) => card.bay.id)).toEqual(['b', 'a']);
    const some: WallMessage = { kind: 'some', now: at(noon), bays: [bay('a', 'NEW 1')] };
    const next = hearMessage(first, some, 'run-2', noon);
    expect(plates(next)).toEqual(['T 1', 'NEW 1']);
    expect(next.cards['b']).toBe(first.cards['b']);
    expect(next.position).toBe('run-2');
  });

  test('forgets what was before when it is told the whole again', () => {
    const first = hearMessage(emptyWall, whole(['a', 'b', 'c']), 'run-1', noon);
    const again = hearMessage(first, whole(['b']), 'other-1', noon);
    expect(cardsInOrder(again).map((card) => card.bay.id)).toEqual(['b']);
    expect(Object.keys(again.cards)).toEqual(['b']);
  });

  test('drops the card of a bay that the shop has not', () => {
    const first = hearMessage(emptyWall, whole(['a']), 'run-1', noon);
    const strange: WallMessage = { kind: 'some', now: at(noon), bays: [bay('z')] };
    expect(Object.keys(hearMessage(first, strange, 'run-2', noon).cards)).toEqual(['a']);
  });

  test('knows how far the clock of the server is ahead of its own', () => {
    const state = hearMessage(emptyWall, whole(['a'], noon + 90_000), 'run-1', noon);
    expect(state.aheadMs).toBe(90_000);
  });
});

/** A week of changes and beats, five seconds apart, cut off now and then, on a wall of 60 bays. */
test('keeps one card a bay and nothing else over a week', { timeout: 60_000 }, () => {
  const ids = Array.from({ length: 60 }, (_, n) => `bay-${n + 1}`);
  const cards = ids.map((id) => bay(id));
  const everyMs = 5_000;
  const messages = (7 * 24 * 3_600_000) / everyMs;
  let state = hearMessage(emptyWall, whole(ids), 'run-100000', noon);
  const size = JSON.stringify(state).length;
  let largest = 0;
  for (let n = 0; n < messages; n += 1) {
    const card = cards[n % cards.length];
    if (card === undefined) throw new Error('no card');
    const ms = noon + n * everyMs;
    const message: WallMessage =
      n % 10_000 === 9_999
        ? whole(ids, ms)
        : n % 5 === 0
          ? { kind: 'beat', now: at(ms) }
          : { kind: 'some', now: at(ms), bays: [card] };
    state = hearMessage(state, message, `run-${100_000 + n}`, ms);
    if (n % 20_000 === 0) largest = Math.max(largest, JSON.stringify(state).length);
  }
  expect(messages).toBe(120_960);
  expect(Object.keys(state.cards)).toHaveLength(60);
  expect(largest).toBe(size);
});

test('whatever it is told, it has a card for no bay but those of the shop', () => {
  const id = fc.integer({ min: 1, max: 70 }).map((n) => `bay-${n}`);
  const message = fc.oneof(
    fc.uniqueArray(id, { maxLength: 60 }).map((ids): WallMessage => whole(ids)),
    fc
      .array(id, { maxLength: 5 })
      .map((ids): WallMessage => ({ kind: 'some', now: at(noon), bays: ids.map((n) => bay(n)) })),
    fc.constant<WallMessage>({ kind: 'beat', now: at(noon) }),
  );
  fc.assert(
    fc.property(fc.array(message, { maxLength: 12 }), (messages) => {
      const state = messages.reduce(
        (now, one, n) => hearMessage(now, one, `run-${n}`, noon),
        emptyWall,
      );
      expect(Object.keys(state.cards).every((one) => state.order.includes(one))).toBe(true);
    }),
    { numRuns: 40 },
  );
});

describe('the age of what a wall shows', () => {
  test('is told by instants, and is stale once two beats and more are missing', () => {
    expect(freshness(undefined, noon)).toBeUndefined();
    expect(freshness(noon, noon + 4_000)).toEqual({ ageMs: 4_000, stale: false });
    expect(freshness(noon, noon + stalledAfterMs)).toMatchObject({ stale: false });
    expect(freshness(noon, noon + stalledAfterMs + 1)).toMatchObject({ stale: true });
  });

  test('is right after a minute in which the browser let no timer run', () => {
    expect(freshness(noon, noon + 60_000)).toEqual({ ageMs: 60_000, stale: true });
  });

  test('is never less than nothing, though the clock was set back', () => {
    expect(freshness(noon, noon - 3_600_000)).toEqual({ ageMs: 0, stale: false });
  });
});

test('tries again soon at first, then less often, and never stops', () => {
  expect([0, 1, 2, 3, 4, 5, 50].map(pauseBeforeMs)).toEqual([
    500, 1_000, 2_000, 4_000, 8_000, 15_000, 15_000,
  ]);
});

describe('a position in the stream', () => {
  test('is read as it was written', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[a-z0-9]{1,12}$/), fc.nat(), (run, version) => {
        expect(parsePosition(positionText({ run, version }))).toEqual({ run, version });
      }),
    );
  });

  test.each([
    null,
    undefined,
    '',
    'run',
    'run-',
    '-1',
    'run-1.5',
    'run--1',
    'RUN-1',
    'a-9'.repeat(40),
  ])('is nothing where it is none: %s', (text) => {
    expect(parsePosition(text)).toBeUndefined();
  });

  test('is nothing where the number is larger than can be counted', () => {
    expect(parsePosition('run-99999999999999999999')).toBeUndefined();
  });
});
