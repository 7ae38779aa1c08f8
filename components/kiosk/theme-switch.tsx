'use client';
import { useEffect, useState } from 'react';
import { Button } from '../design/button';
import { parseTheme, themeCookie, themeNames, themes, type Theme } from '../design/theme';

const yearS = 365 * 24 * 3600;

const apply = (theme: Theme): void => {
  document.cookie = `${themeCookie}=${theme}; path=/; max-age=${yearS}; samesite=lax`;
  if (theme === 'screen') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = theme;
};

/** Light, dark, or as the screen's own setting says. */
export function ThemeSwitch() {
  const [theme, setTheme] = useState<Theme>('screen');
  useEffect(() => {
    setTheme(parseTheme(document.documentElement.dataset['theme']));
  }, []);
  return (
    <div role="group" aria-label="Light or dark" className="flex flex-wrap gap-3">
      {themes.map((one) => (
        <Button
          key={one}
          kind={one === theme ? 'chosen' : 'plain'}
          pressed={one === theme}
          onPress={() => {
            apply(one);
            setTheme(one);
          }}
        >
          {themeNames[one]}
        </Button>
      ))}
    </div>
  );
}
