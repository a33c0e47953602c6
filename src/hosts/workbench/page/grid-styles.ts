import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  VerticalAlign,
  WrapStrategy,
  type IBorderData,
  type IStyleData,
} from '@univerjs/presets';
import type { LinesImage, StyleImage } from '../../../xlsx/image.ts';

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
    ...(style.vertical === undefined ? {} : { vt: UPRIGHT[style.vertical] }),
    ...(style.indent === undefined ? {} : { pd: indented(style.indent, style.horizontal) }),
    ...(style.lines === undefined ? {} : { bd: bordersOf(style.lines) }),
    // Said outright, since a cell with a drop-down wraps unless told.
    tb: style.wrap ? WrapStrategy.WRAP : WrapStrategy.OVERFLOW,
  };
}

const ALIGN = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
} as const;

const UPRIGHT = {
  top: VerticalAlign.TOP,
  center: VerticalAlign.MIDDLE,
  bottom: VerticalAlign.BOTTOM,
} as const;

/** Pixels of one step of indent: about three spaces (ECMA-376 part 1, 18.8.1). */
const STEP = 9;

/** Pixels that any text keeps off the cell's side. */
const PADDING = 2;

const indented = (steps: number, horizontal: StyleImage['horizontal']) => {
  const pixels = PADDING + steps * STEP;
  return horizontal === 'right' ? { r: pixels } : { l: pixels };
};

function bordersOf({ left, right, top, bottom }: LinesImage): IBorderData {
  const line = (color: string | undefined) =>
    color === undefined ? null : { s: BorderStyleTypes.THIN, cl: { rgb: color } };
  return { l: line(left), r: line(right), t: line(top), b: line(bottom) };
}
