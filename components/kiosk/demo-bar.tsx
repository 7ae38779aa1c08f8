'use client';
import { Button } from '../design/button';
import type { DemoMechanic } from './use-demo';

/** For a visitor without a microphone: a recorded mechanic speaks into the kiosk's own ears. */
export function DemoBar({ demo }: { demo: DemoMechanic }) {
  if (demo.lines.length === 0) return null;
  return demo.saying === undefined ? (
    <Button glyph="play" onPress={demo.speak}>
      <span className="sr-only">Hear a </span>Demo mechanic
    </Button>
  ) : (
    <Button glyph="pause" kind="chosen" onPress={demo.stop}>
      “{demo.saying}”
    </Button>
  );
}
