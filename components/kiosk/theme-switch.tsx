'use client';
import { useEffect, useState } from 'react';
import { Button } from '../design/button';
import { applyTheme, parseTheme, themeNames, themes, type Theme } from '../design/theme';

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
            applyTheme(one);
            setTheme(one);
          }}
        >
          {themeNames[one]}
        </Button>
      ))}
    </div>
  );
}
