'use client';
import { Button } from '../design/button';
import { useKioskVoice } from './kiosk-voice';

/** The way to the practice of one's voice, where somebody is signed on. */
export function PractiseButton({ onPress }: { readonly onPress?: () => void }) {
  const { onPractise } = useKioskVoice();
  return onPractise === undefined ? null : (
    <Button
      glyph="speak"
      onPress={() => {
        onPress?.();
        onPractise();
      }}
    >
      Practise your voice
    </Button>
  );
}
