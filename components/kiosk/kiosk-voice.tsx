'use client';
import { createContext, useContext } from 'react';
import type { Bay } from '@/lib/shop';
import type { PersonalVoice } from '@/lib/voice';
import type { VoiceLink } from './voice-link';

/** Whom this kiosk listens to and how it is called, for whatever lies inside it. */
export interface KioskVoice {
  /** Of whoever is signed on, as far as it was practised. */
  readonly voice?: PersonalVoice | undefined;
  readonly bay?: Bay | undefined;
  /** Opens the practice of the voice. */
  readonly onPractise?: (() => void) | undefined;
  /** Given to whoever may set the call word. */
  readonly link?: Pick<VoiceLink, 'setCallWord'> | undefined;
  /** The server has another call word. */
  readonly onCallWord?: ((bay: Bay) => void) | undefined;
}

const KioskVoiceContext = createContext<KioskVoice>({});

export const KioskVoiceProvider = KioskVoiceContext.Provider;

export const useKioskVoice = (): KioskVoice => useContext(KioskVoiceContext);
