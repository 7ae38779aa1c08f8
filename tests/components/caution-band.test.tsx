// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import { CautionBands } from '@/components/step/caution-band';
import type { Caution } from '@/lib/procedure';
import { render, screen } from './dom';

const caution = (signal: Caution['signal'], hazard: string): Caution => ({
  signal,
  hazard,
  consequence: 'It can hurt.',
  avoidance: 'Stand clear.',
});

describe('cautions', () => {
  test('stand the gravest first, whatever the order of the sheet', () => {
    render(
      <CautionBands
        cautions={[
          caution('NOTICE', 'Soft thread.'),
          caution('WARNING', 'Hot coolant.'),
          caution('DANGER', 'Raised vehicle.'),
          caution('CAUTION', 'Sharp edge.'),
        ]}
      />,
    );
    expect(screen.getAllByRole('region').map((band) => band.getAttribute('aria-label'))).toEqual([
      'DANGER: Raised vehicle.',
      'WARNING: Hot coolant.',
      'CAUTION: Sharp edge.',
      'NOTICE: Soft thread.',
    ]);
  });

  test('say hazard, consequence and how to avoid it', () => {
    render(<CautionBands cautions={[caution('WARNING', 'Hot coolant.')]} />);
    expect(screen.getByRole('region').textContent).toBe(
      'WARNINGHot coolant. It can hurt. Stand clear.',
    );
  });

  test('carry the alert triangle only where somebody can be hurt (ANSI Z535.4)', () => {
    const { container } = render(
      <CautionBands
        cautions={(['DANGER', 'WARNING', 'CAUTION', 'NOTICE'] as const).map((signal) =>
          caution(signal, 'x'),
        )}
      />,
    );
    expect(
      Array.from(container.querySelectorAll('[data-alert]')).map((one) =>
        one.getAttribute('data-alert'),
      ),
    ).toEqual(['DANGER', 'WARNING', 'CAUTION']);
  });
});
