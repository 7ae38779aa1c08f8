'use client';

import { useEffect, useState, useSyncExternalStore } from 'react';
import type { Heard, Understanding, VoiceContext } from '@/lib/voice';
import { Ears, type EarState } from './ears';
import { useLatest } from './use-latest';

export interface Listening {
  readonly ears: Ears;
  readonly state: EarState;
}

const off: EarState = { kind: 'off' };

/**
 * One pair of ears for as long as the component lives. They begin by `ears.start()`.
 * `place` names what is on the screen (see `Ears.attend`). `onPreview` gets numbers that may still go on: to be shown,
 * not acted on.
 */
export const useEars = (
  context: VoiceContext,
  place: string,
  onUnderstood: (understanding: Understanding, heard: Heard) => void,
  onPreview: (understanding: Understanding, heard: Heard) => void = () => undefined,
  onBargeIn: () => void = () => undefined,
): Listening => {
  const latest = useLatest({ onUnderstood, onPreview, onBargeIn });
  const [ears] = useState(
    () =>
      new Ears({
        onUnderstood: (understanding, heard) => {
          latest.current.onUnderstood(understanding, heard);
        },
        onPreview: (understanding, heard) => {
          latest.current.onPreview(understanding, heard);
        },
        onBargeIn: () => {
          latest.current.onBargeIn();
        },
      }),
  );
  useEffect(() => {
    ears.attend(context, place);
  }, [ears, context, place]);
  useEffect(
    () => () => {
      ears.stop();
    },
    [ears],
  );
  const state = useSyncExternalStore(
    ears.subscribe,
    () => ears.state,
    () => off,
  );
  return { ears, state };
};
