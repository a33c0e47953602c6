import { webDarkTheme, webLightTheme } from '@fluentui/tokens';
import { setTheme } from '@fluentui/web-components/theme/set-theme.js';

export type PaneTheme = 'light' | 'dark';

/** Fluent's own themes; one of each, since the setter keeps what it made of them. */
const themes = { light: webLightTheme, dark: webDarkTheme } as const;

/** Gives an element and all in it the look of a theme. */
export function showTheme(element: HTMLElement, theme: PaneTheme): void {
  setTheme(themes[theme], element);
  element.style.colorScheme = theme;
}

/** The media query that says what the person prefers. */
export const prefersDark = (): MediaQueryList => matchMedia('(prefers-color-scheme: dark)');
