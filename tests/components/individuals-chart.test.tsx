// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import { IndividualsChart, type IndividualPoint } from '@/components/charts';
import { individualsChart, zoneSignals } from '@/lib/statistics';
import { render, screen, within } from './dom';
import { cellsOf } from './table';

/** NIST/SEMATECH e-Handbook 6.3.2.2, from memory: mean 50.81, limits 45.8159 and 55.8041, mR̄ 1.8778. */
const published = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

const pointsOf = (
  values: readonly number[],
  more: (at: number) => Partial<IndividualPoint> = () => ({}),
): readonly IndividualPoint[] =>
  values.map((value, at) => {
    const before = values[at - 1];
    return {
      key: String(at),
      value,
      ...(before !== undefined && { movingRange: Math.abs(value - before) }),
      verdict: 'inSpec',
      rules: [],
      day: `${at + 1} Nov`,
      when: `${at + 1} Nov, 10:00`,
      href: `/jobs/a?at=${at + 1}`,
      ...more(at),
    };
  });

const limitsOf = (values: readonly number[]) => {
  const limits = individualsChart(values);
  if (!limits.ok) throw new Error(limits.error.message);
  return limits.value;
};

const markOf = (link: HTMLElement): string | null | undefined =>
  link.querySelector('[data-mark]')?.getAttribute('data-mark');

describe('the individuals chart', () => {
  test('says in words and beside its lines what it shows', () => {
    render(
      <IndividualsChart
        title="Flow"
        unit="L"
        points={pointsOf(published)}
        limits={limitsOf(published)}
        spec={{ lower: 44, upper: 56 }}
      />,
    );
    const chart = screen.getByRole('group', { name: /^Flow 10 values from 1 Nov to 10 Nov/ });
    expect(chart.querySelector('title')?.textContent).toBe('Flow');
    expect(chart.querySelector('desc')?.textContent.split('. ')).toEqual([
      '10 values from 1 Nov to 10 Nov',
      'Mean 50.8 L, limits of the process 45.8 to 55.8 L (a first guess: fewer than 20 values)',
      'Specification 44.0 to 56.0 L',
      '0 out of spec, 0 break a rule, 0 with a moving range beyond its limit.',
    ]);
    for (const words of ['Spec max 56.0', 'Upper limit 55.8', 'Mean 50.8', 'Lower limit 45.8'])
      expect(within(chart).getByText(words)).toBeTruthy();
    // 3.267 × 1.8778
    expect(within(chart).getByText('Upper limit 6.1')).toBeTruthy();
  });

  test('marks what breaks a rule or is out of spec by a shape and in words, and puts it in the way of the Tab key', () => {
    const values = [10, 11, 10, 11, 10, 11, 10, 11, 10, 11, 10, 16, 10, 8.9];
    const limits = limitsOf(values);
    const signals = zoneSignals(values, limits);
    if (!signals.ok) throw new Error(signals.error.message);
    expect(signals.value).toEqual([{ at: 11, rule: 'beyondThree', side: 'above' }]);
    render(
      <IndividualsChart
        title="Torque"
        unit="N·m"
        limits={limits}
        spec={{ lower: 9 }}
        points={pointsOf(values, (at) => ({
          rules: signals.value.filter((one) => one.at === at).map(({ rule }) => rule),
          ...(at === 13 && { verdict: 'outOfSpec' }),
        }))}
      />,
    );
    const chart = screen.getByRole('group', { name: /^Torque 14 values/ });
    const links = within(chart).getAllByRole('link');
    expect(links.length).toBe(14);
    const reached = links.filter((link) => link.getAttribute('tabindex') === '0');
    expect(reached.map((link) => [link.getAttribute('href'), markOf(link)])).toEqual([
      ['/jobs/a?at=12', 'rule'],
      ['/jobs/a?at=14', 'outOfSpec'],
    ]);
    expect(reached.map((link) => link.getAttribute('aria-label'))).toEqual([
      '12 Nov, 10:00: 16.0 N·m, in spec; rule 1: beyond three sigma; moving range beyond its limit',
      '14 Nov, 10:00: 8.9 N·m, out of spec',
    ]);
    expect(reached[0]?.textContent).toMatch(/1$/);
    for (const words of ['breaks a rule, by its number', 'out of spec', 'specification'])
      expect(screen.getAllByText(words).length).toBeGreaterThan(0);
  });

  test('has every value in its table, each with the way to its job', () => {
    render(
      <IndividualsChart
        title="Flow"
        unit="L"
        points={pointsOf([4.5, 4.75], () => ({ tool: 'Jug' }))}
      />,
    );
    expect(cellsOf('Flow: all 2 values, in the order of time')).toEqual([
      ['When', 'Value, L', 'Moving range, L', 'Verdict', 'Tool', 'Marks'],
      ['1 Nov, 10:00', '4.50', '–', 'in spec', 'Jug', '–'],
      ['2 Nov, 10:00', '4.75', '0.25', 'in spec', 'Jug', '–'],
    ]);
    const table = screen.getByRole('table', { hidden: true });
    expect(
      within(table)
        .getAllByRole('link', { hidden: true })
        .map((link) => link.getAttribute('href')),
    ).toEqual(['/jobs/a?at=1', '/jobs/a?at=2']);
  });

  test('shows one value, and no limits where there are none', () => {
    render(<IndividualsChart title="Gap" unit="mm" points={pointsOf([0.3])} />);
    expect(
      screen.getByRole('group', { name: /^Gap 1 value on 1 Nov\. Too few for limits\./ }).tagName,
    ).toBe('svg');
  });
});
