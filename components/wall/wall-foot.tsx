'use client';
import { useEffect, useState } from 'react';
import { ageWords, type Freshness } from '@/lib/wall';
import { applyTheme, parseTheme, themeNames, themes, type Theme } from '../design/theme';
import { Glyph } from '../design/glyph';
import { clockText } from '../design/duration';
import type { WantSound } from './use-want-sound';

const ageText = (fresh: Freshness | undefined): string => {
  if (fresh === undefined) return 'Asking the server …';
  return `Data ${ageWords(fresh.ageMs)} old`;
};

/** What the wall says of itself: whose, what time, how old; and its two switches. */
export function WallFoot({
  shop,
  fresh,
  shopMs,
  sound,
}: {
  readonly shop: string;
  readonly fresh: Freshness | undefined;
  readonly shopMs: number;
  readonly sound: WantSound;
}) {
  const [theme, setTheme] = useState<Theme>('screen');
  useEffect(() => {
    setTheme(parseTheme(document.documentElement.dataset['theme']));
  }, []);
  const onTheme = (): void => {
    const next = themes[(themes.indexOf(theme) + 1) % themes.length] ?? 'screen';
    applyTheme(next);
    setTheme(next);
  };
  const button = 'flex min-h-[2.4rem] items-center gap-2 rounded-small border-2 border-edge px-3';
  return (
    <footer className="flex items-center gap-6 text-body">
      <p className="truncate font-bold">{shop}</p>
      {fresh === undefined ? null : <p>{clockText(new Date(shopMs).toISOString())}</p>}
      <p data-age className={fresh?.stale === true ? 'font-bold text-bad' : ''}>
        {ageText(fresh)}
      </p>
      <span className="grow" />
      <button type="button" className={button} aria-pressed={sound.on} onClick={sound.toggle}>
        <Glyph name={sound.on ? 'speak' : 'silent'} />
        {sound.on ? 'Sound on' : 'Sound off'}
      </button>
      <button type="button" className={button} onClick={onTheme}>
        {themeNames[theme]}
      </button>
    </footer>
  );
}
