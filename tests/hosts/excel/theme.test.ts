import { describe, expect, it } from 'vitest';
import { themeOf } from '../../../src/hosts/excel/theme.ts';

describe('the theme', () => {
  it.each([
    [
      'what Excel says outright',
      { isDarkTheme: true, bodyBackgroundColor: '#ffffff' },
      false,
      'dark',
    ],
    ['a black background', { bodyBackgroundColor: '#262626' }, false, 'dark'],
    ['a dark grey background', { bodyBackgroundColor: '#6A6A6A' }, false, 'dark'],
    ['a white background', { bodyBackgroundColor: '#FFFFFF' }, true, 'light'],
    ['a light grey background', { bodyBackgroundColor: '#E6E6E6' }, true, 'light'],
    ['no word from Excel, dark browser', undefined, true, 'dark'],
    ['no word from Excel, light browser', undefined, false, 'light'],
    ['a colour that is none', { bodyBackgroundColor: 'canvas' }, false, 'light'],
  ] as const)('follows %s', (_, office, browser, expected) => {
    expect(themeOf(office, browser)).toBe(expected);
  });
});
