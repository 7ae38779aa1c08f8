'use client';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { KioskEffect } from '@/lib/kiosk';
import type { SpeaksBack } from './kiosk-settings';
import { LocalVoice } from './local-voice';
import { Tones } from './sound';
import { Speaker } from './speaker';

export interface Sound {
  readonly perform: (effect: Extract<KioskEffect, { kind: 'say' | 'tone' }>) => void;
  readonly hush: () => void;
  readonly whenQuiet: () => Promise<void>;
  /** Whether this machine has a voice of its own. */
  readonly voiceAvailable: boolean;
}

/**
 * Tones and the machine's own voice, as this kiosk's settings allow. `tool`: a tool is too loud to speak against;
 * `onSpeaking` gets what is being said, so that the kiosk does not listen to itself.
 */
export const useSound = (
  speaksBack: SpeaksBack,
  tool: boolean,
  onSpeaking: (text: string | undefined) => void,
): Sound => {
  const [tone] = useState(() => new Tones());
  const latest = useRef(onSpeaking);
  useEffect(() => {
    latest.current = onSpeaking;
  }, [onSpeaking]);
  const [speaker] = useState(
    () =>
      new Speaker(
        new LocalVoice(),
        (text) => {
          latest.current(text);
        },
        () => performance.now(),
      ),
  );
  const [voiceAvailable, setVoiceAvailable] = useState(false);
  useEffect(() => {
    const look = (): void => {
      setVoiceAvailable(LocalVoice.available());
    };
    look();
    // Browsers list their voices only after a while.
    if (!('speechSynthesis' in globalThis)) return;
    speechSynthesis.addEventListener('voiceschanged', look);
    return () => {
      speechSynthesis.removeEventListener('voiceschanged', look);
    };
  }, []);
  useEffect(() => {
    speaker.tool(tool);
  }, [speaker, tool]);
  useEffect(() => {
    if (speaksBack !== 'speech') speaker.hush();
  }, [speaker, speaksBack]);
  useEffect(
    () => () => {
      speaker.hush();
      tone.close();
    },
    [speaker, tone],
  );
  const perform = useCallback<Sound['perform']>(
    (effect) => {
      if (effect.kind === 'tone' && speaksBack !== 'off') tone.play(effect.tone);
      if (effect.kind === 'say' && speaksBack === 'speech' && LocalVoice.available())
        speaker.say(effect.text);
    },
    [tone, speaker, speaksBack],
  );
  const hush = useCallback(() => {
    speaker.hush();
  }, [speaker]);
  const whenQuiet = useCallback(() => speaker.whenQuiet(), [speaker]);
  return { perform, hush, whenQuiet, voiceAvailable };
};
