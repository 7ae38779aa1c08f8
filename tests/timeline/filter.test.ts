import { expect, test } from 'vitest';
import { momentAddress, pageAt, pageSize, parseFilter, timelineOf } from '@/lib/timeline';
import { Bay, event, opening } from '../job/driver';
import { doSteps } from '../job/hands';
import { hatchJob, lidJob } from '../job/lid-procedure';

test('an address names kinds and a step; what is neither is left aside', () => {
  expect(parseFilter('readings', undefined)).toEqual({ kinds: ['readings'] });
  expect(parseFilter(['holds', 'heard', 'heard', 'people'], 'close')).toEqual({
    kinds: ['heard', 'holds'],
    step: 'close',
  });
  expect(parseFilter(undefined, '')).toEqual({ kinds: [] });
  expect(parseFilter(undefined, ['a', 'b'])).toEqual({ kinds: [] });
});

test('an address of a moment keeps what is listed', () => {
  expect(momentAddress('J', parseFilter(['readings', 'parts'], 'a b'), 7)).toBe(
    '/jobs/J?kind=readings&kind=parts&step=a+b&at=7',
  );
});

test('lists events of any of the kinds, at the step', () => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid');
  const { rows } = timelineOf(lidJob, bay.log);
  const listed = (kind: string | readonly string[] | undefined, step?: string) =>
    pageAt(rows, parseFilter(kind, step), bay.state.seq).rows.map(({ seq }) => seq);
  expect(listed(undefined)).toEqual([1, 2, 3, 4, 5, 6]);
  expect(listed('fluids')).toEqual([2, 3]);
  expect(listed(['fluids', 'parts'])).toEqual([2, 3, 6]);
  expect(listed('fluids', 'open-lid')).toEqual([]);
  expect(listed(undefined, 'open-lid')).toEqual([4, 5, 6]);
});

test('a long list is shown a page at a time, the one that the moment is on', () => {
  const events = [
    opening(hatchJob),
    ...Array.from({ length: 2 * pageSize + 20 }, (_, at) =>
      event(at + 2, { type: 'foremanCalled' }),
    ),
  ];
  const { rows } = timelineOf(hatchJob, events);
  const ends = (at: number) => {
    const { rows: page, earlier, later, before } = pageAt(rows, { kinds: ['holds'] }, at);
    return [page[0]?.seq, page.at(-1)?.seq, earlier, later, before];
  };
  // The first call is event 2.
  expect(ends(1)).toEqual([2, 101, undefined, 102, 0]);
  expect(ends(101)).toEqual([2, 101, undefined, 102, 0]);
  expect(ends(102)).toEqual([102, 201, 101, 202, 100]);
  expect(ends(221)).toEqual([202, 221, 201, undefined, 200]);
});
