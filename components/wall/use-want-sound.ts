'use client';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { BayCard } from '@/lib/wall';
import { Tones } from '../kiosk/sound';

const key = 'baycall-wall-sound';

export interface WantSound {
  readonly on: boolean;
  readonly toggle: () => void;
}

const wantsIn = (cards: readonly BayCard[]): ReadonlySet<string> =>
  new Set(
    cards.flatMap(({ bay, wants }) => wants.map(({ kind, since }) => `${bay.id} ${kind} ${since}`)),
  );

/** One tone when something new needs a person; off until somebody turns it on at this screen. */
export const useWantSound = (cards: readonly BayCard[]): WantSound => {
  const [on, setOn] = useState(false);
  const [tones] = useState(() => new Tones());
  const heard = useRef<ReadonlySet<string>>(undefined);
  useEffect(() => {
    setOn(localStorage.getItem(key) === 'on');
    return () => {
      tones.close();
    };
  }, [tones]);
  useEffect(() => {
    const now = wantsIn(cards);
    const before = heard.current;
    // The first picture of the shop is no news.
    if (cards.length > 0) heard.current = now;
    if (on && before !== undefined && [...now].some((want) => !before.has(want))) tones.play('ask');
  }, [cards, on, tones]);
  const toggle = useCallback(() => {
    setOn((before) => {
      localStorage.setItem(key, before ? 'off' : 'on');
      return !before;
    });
  }, []);
  return { on, toggle };
};
