// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import { VerdictMark } from '@/components/step/verdict-mark';
import { verdicts } from '@/lib/metrology/verdict';
import { render } from './dom';

const look = (verdict: (typeof verdicts)[number]) => {
  const { container } = render(<VerdictMark verdict={verdict} />);
  return {
    word: container.textContent,
    shape: container.querySelector('path')?.getAttribute('d'),
    hidden: container.querySelector('svg')?.getAttribute('aria-hidden'),
  };
};

describe('a verdict', () => {
  test.each([
    ['inSpec', 'in spec'],
    ['notProvable', 'not provable'],
    ['outOfSpec', 'out of spec'],
    ['noFigure', 'recorded, no figure given'],
  ] as const)('%s is told in words', (verdict, word) => {
    expect(look(verdict).word).toBe(word);
  });

  test('is told by its shape alone too, each by another', () => {
    expect(new Set(verdicts.map((verdict) => look(verdict).shape)).size).toBe(verdicts.length);
  });

  test('is read out once: its shape says nothing', () => {
    expect(verdicts.map((verdict) => look(verdict).hidden)).toEqual(verdicts.map(() => 'true'));
  });
});
