export type OfficeTheme = 'light' | 'dark';

interface OfficeColours {
  readonly isDarkTheme?: boolean | undefined;
  readonly bodyBackgroundColor?: string | undefined;
}

/** Light or dark, as Excel itself looks; where Excel does not say, as the browser prefers. */
export function themeOf(
  office: OfficeColours | undefined,
  browserPrefersDark: boolean,
): OfficeTheme {
  const background = office?.bodyBackgroundColor;
  const dark =
    office?.isDarkTheme ?? (background === undefined ? browserPrefersDark : isDark(background));
  return dark ? 'dark' : 'light';
}

/** Whether a colour such as "#262626" is nearer to black than to white, by the usual luma weights. */
function isDark(colour: string): boolean {
  const hex = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})/i.exec(colour);
  if (hex === null) return false;
  const [red = 0, green = 0, blue = 0] = hex.slice(1).map((part) => Number.parseInt(part, 16));
  return 0.299 * red + 0.587 * green + 0.114 * blue < 128;
}
