'use client';
import { useEffect } from 'react';
import {
  actForKey,
  primaryAct,
  secondaryAct,
  wantsNumber,
  type Act,
  type KioskState,
} from '@/lib/kiosk';

/** A foot switch is a key like any other: short goes on, long goes back. */
export const footLongMs = 700;

const typing = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement ||
  target instanceof HTMLTextAreaElement ||
  target instanceof HTMLSelectElement;

const pressesButton = (event: KeyboardEvent): boolean =>
  (event.key === 'Enter' || event.key === ' ') &&
  event.target instanceof Element &&
  event.target.closest('button, a, [role="button"]') !== null;

export interface KeyActions {
  readonly onAct: (act: Act, by: 'key' | 'foot') => void;
  readonly onDigit: (digit: string) => void;
  readonly onEscape: () => void;
}

/** Keys of the acts that make sense now, digits for a wanted value, and the foot switch. */
export const useKeys = (
  state: KioskState,
  footKey: string,
  /** `escape`: a panel of the screen's own has the other keys. */
  attention: 'all' | 'escape' | 'none',
  { onAct, onDigit, onEscape }: KeyActions,
): void => {
  useEffect(() => {
    if (attention === 'none') return;
    const busy = attention === 'escape';
    let pressedAt: number | undefined;
    const down = (event: KeyboardEvent): void => {
      if (event.altKey || event.ctrlKey || event.metaKey) return;
      if (event.key === footKey) {
        event.preventDefault();
        if (!event.repeat) pressedAt = event.timeStamp;
        return;
      }
      if (event.repeat || pressesButton(event)) return;
      if (busy || typing(event.target)) {
        if (event.key === 'Escape') onEscape();
        return;
      }
      if (/^[0-9]$/.test(event.key) && state.question === undefined && wantsNumber(state)) {
        event.preventDefault();
        onDigit(event.key);
        return;
      }
      const act = actForKey(state, event.key);
      if (act !== undefined) {
        event.preventDefault();
        onAct(act, 'key');
      } else if (event.key === 'Escape') onEscape();
    };
    const up = (event: KeyboardEvent): void => {
      if (event.key !== footKey || pressedAt === undefined) return;
      const long = event.timeStamp - pressedAt >= footLongMs;
      pressedAt = undefined;
      const act = busy ? undefined : long ? secondaryAct(state) : primaryAct(state);
      if (act !== undefined) onAct(act, 'foot');
    };
    window.addEventListener('keydown', down);
    window.addEventListener('keyup', up);
    return () => {
      window.removeEventListener('keydown', down);
      window.removeEventListener('keyup', up);
    };
  }, [state, footKey, attention, onAct, onDigit, onEscape]);
};
