// @vitest-environment jsdom
import { describe, expect, test, vi } from 'vitest';
import { CallWordChoice } from '@/components/kiosk/call-word-choice';
import { KioskVoiceProvider } from '@/components/kiosk/kiosk-voice';
import { SayNow } from '@/components/kiosk/say-now';
import { err, ok, type Result } from '@/lib/result';
import type { Bay } from '@/lib/shop';
import { press, render, screen } from './dom';

const bay: Bay = { id: 'bay-1', name: 'Bay 1' };
const called: Bay = { ...bay, callWord: 'jupiter' };

const show = (one: Bay, answer: Result<Bay, string> = ok(called)) => {
  const setCallWord = vi.fn(() => Promise.resolve(answer));
  const onKept = vi.fn();
  render(<CallWordChoice bay={one} link={{ setCallWord }} onKept={onKept} />);
  return { setCallWord, onKept };
};

describe('how a kiosk is called', () => {
  test('is set and taken away by a foreman', async () => {
    const { setCallWord, onKept } = show(bay);
    expect(screen.getByRole('button', { name: 'No call word', pressed: true })).toBeTruthy();
    press('“jupiter”');
    await vi.waitFor(() => {
      expect(onKept).toHaveBeenCalledWith(called);
    });
    expect(setCallWord).toHaveBeenCalledWith('bay-1', 'jupiter');
    press('No call word');
    expect(setCallWord).toHaveBeenLastCalledWith('bay-1', undefined);
  });

  test('stays as it was where the server refuses, and says so', async () => {
    const { onKept } = show(bay, err('Only a foreman may.'));
    press('“compass”');
    expect(await screen.findByText('Only a foreman may.')).toBeTruthy();
    expect(onKept).not.toHaveBeenCalled();
  });

  test('is only told to everybody else', () => {
    render(<CallWordChoice bay={called} />);
    expect(screen.getByRole('status').textContent).toBe(
      'A phrase acts only behind “jupiter”: “jupiter, next”. For 6 seconds after a phrase, and 10 after a question, it needs none.',
    );
    expect(screen.queryByRole('button')).toBeNull();
  });

  test('stands before what can be said, in the words of whoever is signed on', () => {
    const voice = {
      own: [{ say: 'carry on', intent: { kind: 'next' } as const }],
      leastConfidence: 0,
      leastNumberConfidence: 0,
      readBack: [],
    };
    render(
      <KioskVoiceProvider value={{ bay: called, voice }}>
        <SayNow phrases={['next', 'repeat', 'torqued …']} />
      </KioskVoiceProvider>,
    );
    expect(screen.getAllByRole('listitem').map((item) => item.textContent)).toEqual([
      'begin with “jupiter”',
      '“carry on”',
      '“repeat”',
      '“torqued …”',
    ]);
  });
});
