/** Light, dark, or as the screen's own setting says. Kept per kiosk in a cookie, so that the first paint is right. */
export const themes = ['screen', 'light', 'dark'] as const;
export type Theme = (typeof themes)[number];

export const themeCookie = 'theme';

export const parseTheme = (text: string | undefined): Theme =>
  themes.find((theme) => theme === text) ?? 'screen';

const yearS = 365 * 24 * 3600;

/** Shows the page so and keeps it for this screen. */
export const applyTheme = (theme: Theme): void => {
  document.cookie = `${themeCookie}=${theme}; path=/; max-age=${yearS}; samesite=lax`;
  if (theme === 'screen') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = theme;
};

export const themeNames: Readonly<Record<Theme, string>> = {
  screen: 'As the screen',
  light: 'Light',
  dark: 'Dark',
};
