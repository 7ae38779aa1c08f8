import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  mostPressingFirst,
  wantKinds,
  whoNeedsSomebody,
  type BayCard,
  type Want,
  type WantKind,
} from '@/lib/wall';
import { cardOf, soonAfter, underWay, why } from './shop-floor';
import { doAllOpen } from '../job/hands';

const kindsOf = (card: BayCard): readonly WantKind[] => card.wants.map(({ kind }) => kind);

describe('a bay needs a person', () => {
  test('when the foreman was called, since the call, until somebody answers', () => {
    const bay = underWay();
    bay.does({ type: 'foremanCalled' });
    expect(cardOf(bay.state).wants).toEqual([
      { kind: 'foremanCalled', since: bay.state.lastAt, count: 1 },
    ]);
    bay.does({ type: 'foremanAnswered' }, 'fred');
    const card = cardOf(bay.state);
    expect(card.wants).toEqual([]);
    expect(card.job?.answered).toEqual({ by: 'FRED', at: bay.state.lastAt });
  });

  test('when the job is on hold for the foreman or an approval, and not for parts or a break', () => {
    const heldFor = (text: string) => {
      const bay = underWay();
      bay.does({ type: 'jobHeld', reason: { text } });
      return kindsOf(cardOf(bay.state));
    };
    expect(heldFor('Waiting for the foreman')).toEqual(['waitsForForeman']);
    expect(heldFor('Waiting for approval')).toEqual(['waitsForForeman']);
    expect(heldFor('Waiting for parts')).toEqual([]);
    expect(heldFor('Break')).toEqual([]);
  });

  test('when a deviation waits for a word, counted, until it is decided', () => {
    const bay = underWay();
    const one = bay.does({
      type: 'deviationNoted',
      kind: 'anotherWay',
      step: 'drain',
      reason: why,
    });
    const since = bay.state.lastAt;
    bay.does({ type: 'deviationNoted', kind: 'missingOrDamaged', step: 'drain', reason: why });
    expect(cardOf(bay.state).wants).toEqual([{ kind: 'decision', since, count: 2 }]);
    bay.does(
      { type: 'deviationDecided', deviation: one, decision: 'accepted', reason: why },
      'fred',
    );
    expect(cardOf(bay.state).wants).toMatchObject([{ kind: 'decision', count: 1 }]);
  });

  test('when all steps are settled and loose ends are left', () => {
    const bay = underWay();
    doAllOpen(bay);
    expect(kindsOf(cardOf(bay.state))).toContain('signature');
  });

  test('when its kiosk is not heard of while the job runs, and not while it stands', () => {
    const bay = underWay();
    const seenMs = soonAfter(bay.state) - 36_000;
    const silent = cardOf(bay.state, { presence: { seenMs } });
    expect(silent.wants).toEqual([
      { kind: 'kioskOffline', since: new Date(seenMs).toISOString(), count: 1 },
    ]);
    expect(kindsOf(cardOf(bay.state, { presence: { seenMs: seenMs + 2_000 } }))).toEqual([]);
    bay.does({ type: 'jobHeld', reason: { text: 'Break' } });
    const held = cardOf(bay.state, { presence: { seenMs } });
    expect(held.kiosk.offlineSince).toBe(new Date(seenMs).toISOString());
    expect(held.wants).toEqual([]);
  });

  test('when its kiosk runs and cannot hear, since it said so', () => {
    const bay = underWay();
    const seenMs = soonAfter(bay.state);
    const cannotBeHeard = { why: 'No microphone is there.', sinceMs: seenMs - 60_000 };
    const card = cardOf(bay.state, { presence: { seenMs, cannotBeHeard } });
    expect(card.kiosk.cannotBeHeard).toBe('No microphone is there.');
    expect(card.wants).toEqual([
      { kind: 'cannotBeHeard', since: new Date(seenMs - 60_000).toISOString(), count: 1 },
    ]);
  });
});

const instants = fc
  .integer({ min: 0, max: 1_000_000 })
  .map((seconds) => new Date(1_770_000_000_000 + seconds * 1000).toISOString());
const wants = fc.array(
  fc.record<Want>({
    kind: fc.constantFrom(...wantKinds),
    since: instants,
    count: fc.integer({ min: 1, max: 9 }),
  }),
  { maxLength: 4 },
);
const cards = fc.array(wants, { maxLength: 60 }).map((all): readonly BayCard[] =>
  all.map((own, at) => ({
    bay: { id: `bay-${at + 1}`, name: `Bay ${at + 1}` },
    kiosk: {},
    wants: mostPressingFirst(own),
  })),
);

describe('the list of who needs somebody', () => {
  test('has each bay that wants something once, by its most pressing want, and no other', () => {
    fc.assert(
      fc.property(cards, (all) => {
        const listed = whoNeedsSomebody(all).map(({ card }) => card.bay.id);
        const wanting = all.filter((card) => card.wants.length > 0).map(({ bay }) => bay.id);
        expect([...listed].sort()).toEqual(wanting.sort());
        for (const { card, want, more } of whoNeedsSomebody(all)) {
          expect(want).toBe(card.wants[0]);
          expect(more).toBe(card.wants.length - 1);
        }
      }),
    );
  });

  test('goes from the most pressing kind to the least, and within one from who waits longest', () => {
    fc.assert(
      fc.property(cards, (all) => {
        const order = whoNeedsSomebody(all).map(
          ({ want }) => `${String(wantKinds.indexOf(want.kind))} ${want.since}`,
        );
        expect(order).toEqual([...order].sort());
      }),
    );
  });
});
