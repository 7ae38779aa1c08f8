'use client';
import { useEffect, useState } from 'react';

/** The time, refreshed every `everyMs`; for what is shown, never for what is recorded. */
export const useNow = (everyMs: number): string => {
  const [now, setNow] = useState(() => new Date().toISOString());
  useEffect(() => {
    const timer = setInterval(() => {
      setNow(new Date().toISOString());
    }, everyMs);
    return () => {
      clearInterval(timer);
    };
  }, [everyMs]);
  return now;
};
