'use client';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { personalVoice, type KeptPractice } from '@/lib/practice';
import type { PersonalVoice } from '@/lib/voice';
import type { VoiceLink } from './voice-link';

const againMs = 10_000;

export interface KnownVoice {
  /** The newest practice with the model in use. */
  readonly practice: KeptPractice | undefined;
  readonly voice: PersonalVoice | undefined;
  /** Reads again what is kept. */
  readonly refresh: () => void;
}

/** What earlier practices tell of the voice of whoever is signed on; asked for until it is known. */
export const useVoice = (person: string | undefined, link: VoiceLink): KnownVoice => {
  const [known, setKnown] = useState<{ person: string; practice: KeptPractice | undefined }>();
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    if (person === undefined) return;
    let over = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const look = async (): Promise<void> => {
      const [model, practices] = await Promise.all([link.model(), link.practices()]);
      if (over) return;
      if (!model.ok || !practices.ok) {
        timer = setTimeout(() => void look(), againMs);
        return;
      }
      const practice = practices.value.find(
        (one) => one.model === model.value && one.person === person,
      );
      setKnown({ person, practice });
    };
    void look();
    return () => {
      over = true;
      clearTimeout(timer);
    };
  }, [person, link, turn]);
  const refresh = useCallback(() => {
    setTurn((count) => count + 1);
  }, []);
  const practice = known !== undefined && known.person === person ? known.practice : undefined;
  // Made once for each practice: the ears are made anew for another.
  const voice = useMemo(
    () => (practice === undefined ? undefined : personalVoice(practice)),
    [practice],
  );
  return { practice, voice, refresh };
};
