'use client';
import { useCallback, useMemo, useState, type ComponentProps } from 'react';
import type { Person } from '@/lib/people';
import type { Bay } from '@/lib/shop';
import type { KioskVoice } from './kiosk-voice';
import type { PracticeScreen } from './practice-screen';
import { useSettings } from './use-settings';
import { useVoice } from './use-voice';
import type { VoiceLink } from './voice-link';

/** Whom this kiosk listens to, and the practice of that voice while it has the screen. */
export const useKioskPractice = (
  bay: Bay,
  person: Person | undefined,
  link: VoiceLink,
): {
  readonly hears: KioskVoice;
  readonly practice: ComponentProps<typeof PracticeScreen> | undefined;
} => {
  /** As it was set here after the page was loaded. */
  const [changed, setChanged] = useState<Bay>();
  const [settings] = useSettings();
  const known = useVoice(person?.id, link);
  const { voice, refresh } = known;
  /** Whose practice has the screen: it goes with the person. */
  const [practising, setPractising] = useState<string>();
  const role = person?.role;
  const id = person?.id;
  const { id: bayId, name, callWord } = changed ?? bay;
  const hears = useMemo<KioskVoice>(
    () => ({
      voice,
      bay: { id: bayId, name, ...(callWord === undefined ? {} : { callWord }) },
      onPractise:
        id === undefined
          ? undefined
          : () => {
              setPractising(id);
            },
      link: role === 'foreman' || role === 'writer' ? link : undefined,
      onCallWord: setChanged,
    }),
    [voice, bayId, name, callWord, id, role, link],
  );
  const onClose = useCallback(() => {
    setPractising(undefined);
  }, []);
  const onKept = useCallback(() => {
    refresh();
    setPractising(undefined);
  }, [refresh]);
  const practice =
    person === undefined || practising !== person.id
      ? undefined
      : {
          name: person.name,
          before: known.practice,
          footKey: settings.footKey,
          link,
          onKept,
          onClose,
        };
  return { hears, practice };
};
