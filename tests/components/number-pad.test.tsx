// @vitest-environment jsdom
import { useState } from 'react';
import { describe, expect, test, vi } from 'vitest';
import { NumberPad } from '@/components/design/number-pad';
import { key, press, render, screen } from './dom';

function Pad({
  decimals = true,
  hidden = false,
  onEnter = () => undefined,
}: {
  readonly decimals?: boolean;
  readonly hidden?: boolean;
  readonly onEnter?: () => void;
}) {
  const [value, setValue] = useState('');
  return (
    <NumberPad
      label="Torque"
      value={value}
      onChange={setValue}
      onEnter={onEnter}
      decimals={decimals}
      hidden={hidden}
      most={4}
    />
  );
}
const shown = (): string => screen.getByRole('status', { name: 'Torque' }).textContent;

describe('the number pad', () => {
  test('takes digits and one point, and rubs out the last', () => {
    render(<Pad />);
    press('1');
    press('2');
    press('point');
    press('point');
    press('5');
    expect(shown()).toBe('12.5');
    press('Rub out the last digit');
    expect(shown()).toBe('12.');
  });

  test('takes the same from the keyboard, with a comma for a point', () => {
    const onEnter = vi.fn();
    render(<Pad onEnter={onEnter} />);
    for (const one of ['1', ',', '5', 'x', 'Backspace', '7', 'Enter']) key(one);
    expect(shown()).toBe('1.7');
    expect(onEnter).toHaveBeenCalledOnce();
  });

  test('is full at its length', () => {
    render(<Pad />);
    for (const one of '12345') press(one);
    expect(shown()).toBe('1234');
  });

  test('has no point where whole numbers are counted', () => {
    render(<Pad decimals={false} />);
    expect(screen.queryByRole('button', { name: 'point' })).toBeNull();
    key('2');
    key('.');
    expect(shown()).toBe('2');
  });

  test('shows how many digits a PIN has, not which', () => {
    render(<Pad hidden />);
    for (const one of '407') press(one);
    expect(shown()).toBe('•••');
  });
});
