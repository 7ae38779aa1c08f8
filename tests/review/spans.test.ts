import { expect, test } from 'vitest';
import { dayIn, spansOf } from '@/lib/review';

const text = (spans: ReturnType<typeof spansOf>) =>
  spans.map(({ fromMs, toMs }) => [
    new Date(fromMs).toISOString().slice(0, 16),
    new Date(toMs).toISOString().slice(0, 16),
  ]);

const early = { id: 'early', name: 'Early', from: '06:00', to: '14:00' };
const night = { id: 'night', name: 'Night', from: '22:00', to: '06:00' };

test('days without a shift are one span, both days included', () => {
  const days = { from: '2026-03-02', to: '2026-03-03' };
  expect(text(spansOf(days, undefined, 'UTC'))).toEqual([['2026-03-02T00:00', '2026-03-04T00:00']]);
});

test('a shift is a span on each day', () => {
  const days = { from: '2026-03-02', to: '2026-03-03' };
  expect(text(spansOf(days, early, 'UTC'))).toEqual([
    ['2026-03-02T06:00', '2026-03-02T14:00'],
    ['2026-03-03T06:00', '2026-03-03T14:00'],
  ]);
});

test('a night shift belongs to the day on which it begins', () => {
  const day = { from: '2026-03-02', to: '2026-03-02' };
  expect(text(spansOf(day, night, 'UTC'))).toEqual([['2026-03-02T22:00', '2026-03-03T06:00']]);
});

// Europe/Berlin is at +01:00 in winter and +02:00 in summer; in 2026 it changes on 29 March and 25 October (IANA tz).
test('the day on which summer time begins has 23 hours, and the one on which it ends 25', () => {
  const spring = { from: '2026-03-29', to: '2026-03-29' };
  expect(text(spansOf(spring, undefined, 'Europe/Berlin'))).toEqual([
    ['2026-03-28T23:00', '2026-03-29T22:00'],
  ]);
  const autumn = { from: '2026-10-25', to: '2026-10-25' };
  expect(text(spansOf(autumn, undefined, 'Europe/Berlin'))).toEqual([
    ['2026-10-24T22:00', '2026-10-25T23:00'],
  ]);
});

test('shifts that meet are one span', () => {
  const days = { from: '2026-03-02', to: '2026-03-03' };
  const allDay = { id: 'all', name: 'All', from: '06:00', to: '06:00' };
  expect(text(spansOf(days, allDay, 'UTC'))).toEqual([['2026-03-02T06:00', '2026-03-04T06:00']]);
});

test('the day is the shop’s own', () => {
  const late = Date.parse('2026-03-02T23:30:00Z');
  expect(dayIn(late, 'UTC')).toBe('2026-03-02');
  expect(dayIn(late, 'Europe/Berlin')).toBe('2026-03-03');
  expect(dayIn(late, 'America/New_York')).toBe('2026-03-02');
});
