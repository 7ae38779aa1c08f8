// @vitest-environment jsdom
import { describe, expect, test, vi } from 'vitest';
import { readSettings } from '@/components/kiosk/kiosk-settings';
import { SpeakingBack } from '@/components/kiosk/speaking-back';
import { tunes } from '@/components/kiosk/sound';
import { press, render, screen } from './dom';

describe('answering aloud', () => {
  test('is tones unless it was set otherwise', () => {
    expect(readSettings({ getItem: () => null }).speaksBack).toBe('tones');
    expect(readSettings({ getItem: () => '{"speaksBack":"speech"}' }).speaksBack).toBe('speech');
  });

  test('is chosen from three ways', () => {
    const onChange = vi.fn();
    render(<SpeakingBack speaksBack="tones" voiceAvailable onChange={onChange} />);
    expect(screen.getByRole('button', { pressed: true }).textContent).toBe('Tones');
    press('Tones and speech');
    expect(onChange).toHaveBeenCalledWith('speech');
    press('Not at all');
    expect(onChange).toHaveBeenLastCalledWith('off');
  });

  test('says so where the machine has no voice of its own', () => {
    render(<SpeakingBack speaksBack="speech" voiceAvailable={false} onChange={vi.fn()} />);
    expect(screen.getByRole('status').textContent).toBe(
      'Tones only: this machine has no voice of its own, and no other is used.',
    );
  });

  test('tones lie between 1 and 3 kHz', () => {
    const hz = Object.values(tunes).flatMap((notes) => notes.map((note) => note.hz));
    expect(hz.length).toBeGreaterThan(4);
    expect(hz.filter((one) => one < 1000 || one > 3000)).toEqual([]);
  });
});
