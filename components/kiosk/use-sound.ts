'use client';
import { useCallback, useEffect, useState } from 'react';
import type { KioskEffect } from '@/lib/kiosk';
import type { KioskSettings } from './kiosk-settings';
import { LocalVoice, Tones } from './sound';

export interface Sound {
  readonly perform: (effect: Extract<KioskEffect, { kind: 'say' | 'tone' }>) => void;
  readonly hush: () => void;
  readonly whenQuiet: () => Promise<void>;
  readonly voiceAvailable: boolean;
}

/** Tones and the machine's own voice, as this kiosk's settings allow. */
export const useSound = (
  { tones, voice }: KioskSettings,
  onSpeaking: (speaking: boolean) => void,
): Sound => {
  const [tone] = useState(() => new Tones());
  const [speech] = useState(() => new LocalVoice(onSpeaking));
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
  useEffect(
    () => () => {
      speech.hush();
      tone.close();
    },
    [speech, tone],
  );
  const perform = useCallback<Sound['perform']>(
    (effect) => {
      if (effect.kind === 'tone' && tones) tone.play(effect.tone);
      if (effect.kind === 'say' && voice) speech.say(effect.text);
    },
    [tone, speech, tones, voice],
  );
  const hush = useCallback(() => {
    speech.hush();
  }, [speech]);
  const whenQuiet = useCallback(() => speech.whenQuiet(), [speech]);
  return { perform, hush, whenQuiet, voiceAvailable };
};
