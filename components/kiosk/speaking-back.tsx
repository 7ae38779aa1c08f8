'use client';
import { Button } from '../design/button';
import type { SpeaksBack } from './kiosk-settings';

const ways: readonly { readonly way: SpeaksBack; readonly label: string }[] = [
  { way: 'off', label: 'Not at all' },
  { way: 'tones', label: 'Tones' },
  { way: 'speech', label: 'Tones and speech' },
];

/** What this kiosk really does: without a voice of its own it never speaks. */
const inForce = (speaksBack: SpeaksBack, voiceAvailable: boolean): string => {
  if (speaksBack === 'off') return 'It is quiet now; the screen says everything.';
  if (speaksBack === 'tones')
    return 'Tones only: rising is good, a low double one is not, one tone asks.';
  return voiceAvailable
    ? 'It speaks with the voice of this machine, never while a tool runs. Speak up or touch anything, and it stops.'
    : 'Tones only: this machine has no voice of its own, and no other is used.';
};

/** Whether and how a kiosk answers aloud. */
export function SpeakingBack({
  speaksBack,
  voiceAvailable,
  onChange,
}: {
  readonly speaksBack: SpeaksBack;
  readonly voiceAvailable: boolean;
  readonly onChange: (speaksBack: SpeaksBack) => void;
}) {
  return (
    <>
      <div className="flex flex-wrap gap-3" role="group" aria-label="How it answers aloud">
        {ways.map(({ way, label }) => (
          <Button
            key={way}
            kind={speaksBack === way ? 'chosen' : 'plain'}
            pressed={speaksBack === way}
            onPress={() => {
              onChange(way);
            }}
            {...(speaksBack === way ? { glyph: 'tick' as const } : {})}
          >
            {label}
          </Button>
        ))}
      </div>
      <p role="status" className="text-body text-quiet">
        {inForce(speaksBack, voiceAvailable)}
      </p>
    </>
  );
}
