'use client';
import { useEffect, useState } from 'react';
import { emptyWall, hearMessage, type WallState } from '@/lib/wall';
import { WallStream } from './wall-stream';

/** The shop as the server tells it, for as long as the page is open. */
export const useWall = (): WallState => {
  const [state, setState] = useState(emptyWall);
  useEffect(() => {
    const stream = new WallStream({
      open: (address, hear) => {
        const source = new EventSource(address);
        source.onmessage = ({ data, lastEventId }: MessageEvent<unknown>) => {
          hear(data, lastEventId);
        };
        return source;
      },
      now: () => Date.now(),
      onMessage: (message, position, atMs) => {
        setState((before) => hearMessage(before, message, position, atMs));
      },
    });
    const check = (): void => {
      stream.check();
    };
    check();
    const timer = setInterval(check, 1_000);
    window.addEventListener('online', check);
    document.addEventListener('visibilitychange', check);
    return () => {
      clearInterval(timer);
      window.removeEventListener('online', check);
      document.removeEventListener('visibilitychange', check);
      stream.stop();
    };
  }, []);
  return state;
};

/** The time on this screen's clock, ms, about every `everyMs`; undefined before the page has come alive. */
export const useClock = (everyMs: number): number | undefined => {
  const [now, setNow] = useState<number>();
  useEffect(() => {
    const tick = (): void => {
      setNow(Date.now());
    };
    tick();
    const timer = setInterval(tick, everyMs);
    return () => {
      clearInterval(timer);
    };
  }, [everyMs]);
  return now;
};
