// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import { StepCard } from '@/components/step/step-card';
import type { Step } from '@/lib/procedure';
import { render, screen, within } from './dom';

const step = (more: Partial<Step> = {}): Step => ({
  id: 'seal',
  title: 'Press the seal in',
  instruction: 'Press the seal in until it is flush.',
  cautions: [],
  shows: [],
  oneShot: false,
  handStart: false,
  powerTool: 'notUsed',
  after: [],
  bookMinutes: 5,
  effects: [],
  asks: [],
  ...more,
});

const words = (list: string): readonly string[] =>
  within(screen.getByRole('list', { name: list }))
    .getAllByRole('listitem')
    .map((item) => item.textContent);

describe('the step card', () => {
  test('is named by its step and holds the one instruction', () => {
    render(<StepCard step={step()} />);
    expect(screen.getByRole('article', { name: 'Press the seal in' }).textContent).toBe(
      'Press the seal in until it is flush.',
    );
    expect(screen.queryByRole('list')).toBeNull();
  });

  test('warns before it instructs', () => {
    const hot = { hazard: 'Hot.', consequence: 'Burns.', avoidance: 'Wait.' };
    render(<StepCard step={step({ cautions: [{ signal: 'WARNING', ...hot }] })} />);
    expect(screen.getByRole('article').textContent).toMatch(/^WARNING.*Press the seal in/);
  });

  test('says what must be known before a hand moves', () => {
    render(
      <StepCard
        step={step({ oneShot: true, handStart: true, powerTool: 'notAllowed' })}
        applies={['Grease: seal lip']}
      />,
    );
    expect(screen.getAllByRole('listitem').map((item) => item.textContent)).toEqual([
      'One try. Say “ready” first',
      'Start every thread by hand',
      'No power tool',
      'Grease: seal lip',
    ]);
  });

  test('says which way round it goes', () => {
    render(<StepCard step={step({ orientation: 'Spring side inwards' })} />);
    expect(screen.getByText(/Spring side inwards/).textContent).toBe(
      'Which way round: Spring side inwards',
    );
  });

  test('asks with what passes, and shows the answer in its place', () => {
    render(
      <StepCard
        step={step()}
        asked={[
          { id: 'gap', label: 'Cover seated', hint: 'No gap all round' },
          { id: 'lip', label: 'Lip whole', hint: 'x', answer: { text: 'failed', good: false } },
        ]}
      />,
    );
    expect(words('To be answered')).toEqual([
      'Cover seated: No gap all round',
      'Lip whole: failed',
    ]);
  });
});
