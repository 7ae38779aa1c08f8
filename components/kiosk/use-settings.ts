'use client';
import { useEffect, useState } from 'react';
import { keepSettings, readSettings, usualSettings, type KioskSettings } from './kiosk-settings';

/** This kiosk's settings; undefined until the browser has been asked, so that nothing starts on a guess. */
export const useSettings = (): readonly [
  KioskSettings,
  (settings: KioskSettings) => void,
  boolean,
] => {
  const [settings, setSettings] = useState<KioskSettings>();
  useEffect(() => {
    setSettings(readSettings(localStorage));
  }, []);
  return [
    settings ?? usualSettings,
    (next) => {
      keepSettings(localStorage, next);
      setSettings(next);
    },
    settings !== undefined,
  ];
};
