import { BooleanNumber, HorizontalAlign, WrapStrategy, type IStyleData } from '@univerjs/presets';
import type { StyleImage } from '../../xlsx/image.ts';

/** Added to a style's key: the same look, but whatever is typed stays text. */
export const TEXT_SUFFIX = '-text';

/** The number format that keeps what is typed as text. */
export const TEXT_FORMAT = { pattern: '@' } as const;

/** The image's styles by their index, each also in a variant that keeps text as text. */
export function gridStyles(styles: readonly StyleImage[]): Record<string, IStyleData> {
  const all: Record<string, IStyleData> = {};
  styles.forEach((style, index) => {
    const grid = gridStyle(style);
    all[String(index)] = grid;
    all[`${String(index)}${TEXT_SUFFIX}`] = { ...grid, n: TEXT_FORMAT };
  });
  return all;
}

function gridStyle(style: StyleImage): IStyleData {
  return {
    ...(style.numberFormat === '' || style.numberFormat === 'General'
      ? {}
      : { n: { pattern: style.numberFormat } }),
    ...(style.bold ? { bl: BooleanNumber.TRUE } : {}),
    ...(style.italic ? { it: BooleanNumber.TRUE } : {}),
    ...(style.fontSize === undefined ? {} : { fs: style.fontSize }),
    ...(style.color === undefined ? {} : { cl: { rgb: style.color } }),
    ...(style.fill === undefined ? {} : { bg: { rgb: style.fill } }),
    ...(style.horizontal === undefined ? {} : { ht: ALIGN[style.horizontal] }),
    ...(style.wrap ? { tb: WrapStrategy.WRAP } : {}),
  };
}

const ALIGN = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
} as const;
