'use client';
import { useEffect } from 'react';
import { presenceEveryMs } from '@/lib/wall';
import { setSilence, signalPresence } from './presence-signal';

/** Says now and then that this bay's kiosk is there, for the wall and the foreman. */
export const usePresence = (bay: string): void => {
  useEffect(() => {
    const signal = (): void => {
      void signalPresence(bay);
    };
    signal();
    const timer = setInterval(signal, presenceEveryMs);
    return () => {
      clearInterval(timer);
    };
  }, [bay]);
};

/** Has the wall say why nobody can be heard here, while that is so. */
export const useSilence = (why: string | undefined): void => {
  useEffect(() => {
    setSilence(why);
    return () => {
      setSilence(undefined);
    };
  }, [why]);
};
