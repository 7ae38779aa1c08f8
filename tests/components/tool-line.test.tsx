// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import { NoTool, ToolLine } from '@/components/step/tool-line';
import { chooseTool } from '@/lib/metrology';
import type { TorqueTool } from '@/lib/shop';
import { render, screen, within } from './dom';

const tool = (name: string, more: Partial<TorqueTool> = {}): TorqueTool => ({
  id: name,
  name,
  kind: 'click',
  driveIn: '1/2',
  lowerNm: 20,
  upperNm: 100,
  resolutionNm: 0.5,
  calibration: { on: '2026-01-10', expandedPercent: 2, intervalMonths: 12, intervalCycles: 5000 },
  ...more,
});
const choose = (...tools: readonly TorqueTool[]) =>
  chooseTool(tools, { torqueNm: 60, drive: '1/2' }, '2026-03-01', () => 0);

describe('the tool to take', () => {
  test('is named with its drive and how far it may be off', () => {
    // 2·√((2 % · 60 / 2)² + (0.25/√3)²) = 1.234
    render(<ToolLine choice={choose(tool('Blue wrench'))} />);
    expect(screen.getByText(/^Take/).textContent).toBe('Take Blue wrench, 1/2 in drive, ±1.2 N·m');
  });

  test('that is marked in neither unit of the screen is told its own figure', () => {
    render(
      <ToolLine choice={choose(tool('Inch wrench', { scale: ['[lbf_av].[in_i]'] }))} setNm={60} />,
    );
    expect(screen.getByText(/^Take/).textContent).toContain('set 531.0 lbf·in'); // 60 × 8.850746
  });
});

describe('where every tool is refused', () => {
  test('each one’s reason is given, and what to do', () => {
    const choice = choose(
      tool('Late', { calibration: { ...tool('x').calibration, on: '2024-01-10' } }),
      tool('Small', { upperNm: 50 }),
      tool('Thin', { driveIn: '3/8' }),
    );
    render(<NoTool choice={choice} adapter={false} />);
    const said = screen.getByRole('region', { name: 'No torque tool' });
    expect(
      within(said)
        .getAllByRole('listitem')
        .map((item) => item.textContent),
    ).toEqual([
      'The calibration of Late ran out on 2025-01-10.',
      '60 N·m is too much for Small, good to 50 N·m.',
      'Thin has a 3/8 in drive; 1/2 in is needed.',
    ]);
    expect(said.textContent).toContain('Say “waiting for a tool” to hold the job');
  });

  test('with an adapter on the wrench another one may do', () => {
    render(<NoTool choice={choose(tool('Small', { upperNm: 50 }))} adapter />);
    expect(screen.getByRole('region').textContent).toContain('Take another wrench or adapter');
  });

  test('nothing is said where one will do, or no torque is wanted', () => {
    const { container } = render(
      <>
        <NoTool choice={choose(tool('Good'), tool('Thin', { driveIn: '3/8' }))} adapter={false} />
        <NoTool choice={undefined} adapter={false} />
      </>,
    );
    expect(container.textContent).toBe('');
  });
});
