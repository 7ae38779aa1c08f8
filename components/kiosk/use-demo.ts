'use client';
import { useCallback, useRef, useState } from 'react';
import type { KioskState } from '@/lib/kiosk';
import type { Ears } from '../microphone';
import { linesOf, type DemoLine, type DemoVoices } from './demo-mechanic';

export interface DemoMechanic {
  /** What is being said, or nothing. */
  readonly saying: string | undefined;
  readonly lines: readonly DemoLine[];
  /** Says everything that belongs to the step on the screen, one after another, until stopped. */
  readonly speak: () => void;
  readonly stop: () => void;
}

const betweenMs = 900;

const pause = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms);
  });

/** Recordings played into the same ears that hear the microphone: nothing of the recognition is staged. */
export const useDemo = (
  voices: DemoVoices | undefined,
  state: KioskState,
  ears: Ears,
): DemoMechanic => {
  const [saying, setSaying] = useState<string>();
  const run = useRef<AbortController>(undefined);
  const lines = voices === undefined ? [] : linesOf(voices, state);
  const play = useCallback(
    async (all: readonly DemoLine[], { signal }: AbortController): Promise<void> => {
      for (const { url, say, how } of all) {
        if (signal.aborted || how === 'foreman') break;
        setSaying(say);
        await ears.playRecording(url);
        await pause(betweenMs);
      }
      if (run.current?.signal === signal) run.current = undefined;
      setSaying(undefined);
    },
    [ears],
  );
  return {
    saying,
    lines,
    speak: () => {
      if (run.current !== undefined) return;
      const mine = new AbortController();
      run.current = mine;
      void play(lines, mine);
    },
    stop: () => {
      run.current?.abort();
    },
  };
};
