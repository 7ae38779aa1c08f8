// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import { HearingsChart, HoldsChart, ParetoChart, StepTimesChart } from '@/components/charts';
import { pareto } from '@/lib/statistics';
import { render, screen, within } from './dom';
import { cellsOf } from './table';

const widthsIn = (chart: HTMLElement, selector: string): readonly number[] =>
  [...chart.querySelectorAll(selector)].map((bar) => Number(bar.getAttribute('width')));

const itemsOf = (counts: readonly (readonly [string, number])[]) => {
  const bars = pareto(counts);
  if (!bars.ok) throw new Error(bars.error.message);
  return bars.value.map((bar) => ({ ...bar, key: bar.name, label: bar.name }));
};

describe('the Pareto chart', () => {
  const items = itemsOf([
    ['left out', 1],
    ['another way', 6],
    ['out of spec', 3],
  ]);

  test('says what is most frequent and how few make up most of it', () => {
    render(<ParetoChart title="By kind" what="deviations" items={items} />);
    expect(screen.getByRole('img').querySelector('desc')?.textContent).toBe(
      '10 deviations. Most often: another way, 6 (60 %). The first 2 of 3 make up 90 %.',
    );
  });

  test('has bars as long as their counts, and the counts in its table', () => {
    render(<ParetoChart title="By kind" what="deviations" items={items} />);
    const [six = 0, three = 0, one = 0] = widthsIn(screen.getByRole('img'), 'rect.fill-act');
    expect(six / three).toBeCloseTo(2, 9);
    expect(six / one).toBeCloseTo(6, 9);
    expect(cellsOf('By kind: all 3')).toEqual([
      ['What', 'Count', 'Share', 'This and all above'],
      ['another way', '6', '60 %', '60 %'],
      ['out of spec', '3', '30 %', '90 %'],
      ['left out', '1', '10 %', '100 %'],
    ]);
  });

  test('leads on from a bar', () => {
    const linked = items.map((item) => ({ ...item, href: `?of=${item.key.replaceAll(' ', '-')}` }));
    render(<ParetoChart title="By kind" what="deviations" items={linked} />);
    expect(screen.getByRole('link', { name: 'out of spec' }).getAttribute('href')).toBe(
      '?of=out-of-spec',
    );
  });

  test('draws the first twelve of many and has all of them in its table', () => {
    const many = itemsOf(Array.from({ length: 15 }, (_, at) => [`step ${at}`, 20 - at] as const));
    render(<ParetoChart title="By step" what="deviations" items={many} />);
    expect(widthsIn(screen.getByRole('img'), 'rect.fill-act')).toHaveLength(12);
    expect(screen.getAllByText(/Drawn are the first 12\./).length).toBe(2);
    expect(cellsOf('By step: all 15')).toHaveLength(16);
  });
});

test('holds are told by reason: how often, and how long in all', () => {
  render(
    <HoldsChart
      bars={[
        {
          reason: 'Waiting for parts',
          count: 4,
          running: 1,
          totalMinutes: 400,
          medianMinutes: 59.6,
          longestMinutes: 200,
        },
        { reason: 'Break', count: 2, running: 0, totalMinutes: 30 },
      ]}
    />,
  );
  expect(screen.getByRole('img').querySelector('desc')?.textContent).toBe(
    '6 holds, 7 h 10 in all. The longest in all: Waiting for parts, 6 h 40.',
  );
  const [four = 0, two = 0] = widthsIn(screen.getByRole('img'), 'rect.fill-act');
  expect(four / two).toBeCloseTo(2, 9);
  expect(cellsOf('Holds by reason, the longest in all first')).toEqual([
    ['Reason', 'Holds', 'Still on hold', 'In all', 'Median', 'Longest'],
    ['Waiting for parts', '4', '1', '6 h 40', '1 h 00', '3 h 20'],
    ['Break', '2', '0', '30 min', '–', '–'],
  ]);
});

test('phrases that fail are told by what is false and what is said again; the others are in the table', () => {
  const phrase = (name: string, declined: number, takenBack: number, saidAgain: number) => ({
    phrase: name,
    heard: 50,
    askedBack: 5,
    declined,
    takenBack,
    saidAgain,
    troubled: { share: (declined + takenBack + saidAgain) / 50, from: 0.01, to: 0.3 },
  });
  render(
    <HearingsChart
      heard={100}
      bars={[phrase('torqued {value}', 2, 1, 6), phrase('next', 0, 0, 0)]}
    />,
  );
  const chart = screen.getByRole('img');
  expect(chart.querySelector('desc')?.textContent).toBe(
    '100 hearings: 3 false, 6 said again. Most troubled: “torqued {value}”, 9 of 50.',
  );
  const [wrong = 0, again = 0] = widthsIn(chart, 'g > rect');
  expect(again / wrong).toBeCloseTo(2, 9);
  expect(within(chart).queryAllByText('next').length).toBe(0);
  expect(cellsOf('Hearings by phrase, the most troubled first').slice(1)).toEqual([
    ['torqued {value}', '50', '5', '2', '1', '6', '18 % (1 % to 30 %)'],
    ['next', '50', '5', '0', '0', '0', '0 % (1 % to 30 %)'],
  ]);
});

describe('step times against the book', () => {
  const times = { p10: 4, p25: 6, p50: 8, p75: 10, p90: 30 };
  const row = {
    key: 'drain',
    label: '1. Drain',
    bookMinutes: 5,
    runs: 12,
    quantiles: times,
    overBook: 0.75,
  };

  test('say which step is slowest, and have the quantiles in the table', () => {
    const fill = { ...row, key: 'fill', label: '2. Fill', bookMinutes: 10 };
    render(<StepTimesChart title="Times" rows={[row, fill]} />);
    expect(screen.getByRole('img').querySelector('desc')?.textContent).toBe(
      '1 of 2 steps with at least 5 runs take longer than their book time in half the runs or more. Slowest against the book: 1. Drain, median 8.0 min for 5.0 min.',
    );
    expect(cellsOf('Times, minutes')[1]).toEqual([
      '1. Drain',
      '5',
      '12',
      '4.0',
      '6.0',
      '8.0',
      '10.0',
      '30.0',
      '–',
      '75 %',
    ]);
  });

  test('draw no box from a few runs, and nothing where there were none', () => {
    render(
      <StepTimesChart
        title="Times"
        rows={[
          { ...row, runs: 2 },
          { key: 'fill', label: '2. Fill', bookMinutes: 9, runs: 0, overBook: 0 },
        ]}
      />,
    );
    const chart = screen.getByRole('img');
    expect(chart.querySelectorAll('rect.fill-sunk').length).toBe(0);
    expect(within(chart).getByText('8.0 min of 5.0 min, 2 runs')).toBeTruthy();
    expect(within(chart).getByText('no runs')).toBeTruthy();
    expect(cellsOf('Times, minutes')[2]?.slice(1)).toEqual([
      '9',
      '0',
      ...Array<string>(7).fill('–'),
    ]);
  });
});
