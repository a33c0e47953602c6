import { readColor, type ThemeColors } from './colors.ts';
import type { HighlightLook, LinesImage, StyleImage } from '../image.ts';
import { builtInFormats } from '../parts/number-formats.ts';
import { child, childrenOf, isOn, parseXml, type XmlElement } from '../xml/xml-tree.ts';

export const plainStyle: StyleImage = {
  numberFormat: 'General',
  bold: false,
  italic: false,
  wrap: false,
};

/** The looks of xl/styles.xml, in the order that cells and highlights count them. */
export interface StoredStyles {
  readonly cells: readonly StyleImage[];
  readonly highlights: readonly HighlightLook[];
}

/** Reads xl/styles.xml. */
export function readStyles(part: string, source: string, theme: ThemeColors): StoredStyles {
  const root = parseXml(part, source);
  const highlights = childrenOf(child(root, 'dxfs'), 'dxf').map((dxf) => highlightOf(dxf, theme));
  return { cells: cellStyles(root, theme), highlights };
}

function cellStyles(root: XmlElement, theme: ThemeColors): readonly StyleImage[] {
  const formats = new Map(
    childrenOf(child(root, 'numFmts'), 'numFmt').map(({ attributes }) => [
      Number(attributes['numFmtId']),
      attributes['formatCode'] ?? 'General',
    ]),
  );
  const fonts = child(root, 'fonts')?.children ?? [];
  const fills = child(root, 'fills')?.children ?? [];
  const borders = child(root, 'borders')?.children ?? [];
  return childrenOf(child(root, 'cellXfs'), 'xf').map((xf) => {
    const format = Number(xf.attributes['numFmtId'] ?? 0);
    return {
      ...plainStyle,
      numberFormat: formats.get(format) ?? builtInFormats[format] ?? 'General',
      ...fontOf(fonts[Number(xf.attributes['fontId'] ?? 0)], theme),
      ...fillOf(fills[Number(xf.attributes['fillId'] ?? 0)], theme),
      ...linesOf(borders[Number(xf.attributes['borderId'] ?? 0)], theme),
      ...alignmentOf(child(xf, 'alignment')),
    };
  });
}

function fontOf(font: XmlElement | undefined, theme: ThemeColors): Partial<StyleImage> {
  const flag = (name: string) => {
    const element = child(font, name);
    return element !== undefined && isOn(element.attributes['val'], true);
  };
  const size = Number(child(font, 'sz')?.attributes['val']);
  const color = readColor(child(font, 'color'), theme);
  return {
    bold: flag('b'),
    italic: flag('i'),
    ...(size > 0 ? { fontSize: size } : {}),
    ...(color ? { color } : {}),
  };
}

function fillOf(fill: XmlElement | undefined, theme: ThemeColors): Partial<StyleImage> {
  const pattern = child(fill, 'patternFill');
  if ((pattern?.attributes['patternType'] ?? 'none') === 'none') return {};
  const color = readColor(child(pattern, 'fgColor'), theme);
  return color ? { fill: color } : {};
}

const SIDES = ['left', 'right', 'top', 'bottom'] as const;

function linesOf(border: XmlElement | undefined, theme: ThemeColors): { lines?: LinesImage } {
  const drawn = SIDES.flatMap((side) => {
    const line = child(border, side);
    const isDrawn = (line?.attributes['style'] ?? 'none') !== 'none';
    return isDrawn ? [[side, readColor(child(line, 'color'), theme) ?? '#000000'] as const] : [];
  });
  return drawn.length === 0 ? {} : { lines: Object.fromEntries(drawn) };
}

function alignmentOf(alignment: XmlElement | undefined): Partial<StyleImage> {
  const { horizontal, vertical, wrapText, indent } = alignment?.attributes ?? {};
  const across = ['left', 'center', 'right'] as const;
  const down = ['top', 'center', 'bottom'] as const;
  const known = across.find((each) => each === horizontal);
  const upright = down.find((each) => each === vertical);
  return {
    wrap: isOn(wrapText),
    ...(known ? { horizontal: known } : {}),
    ...(upright ? { vertical: upright } : {}),
    ...(Number(indent) > 0 ? { indent: Number(indent) } : {}),
  };
}

function highlightOf(dxf: XmlElement, theme: ThemeColors): HighlightLook {
  const { bold = false, color } = fontOf(child(dxf, 'font'), theme);
  const pattern = child(child(dxf, 'fill'), 'patternFill');
  // Here a solid fill stands in the background colour, unlike in a cell's own style.
  const fill = readColor(child(pattern, 'bgColor') ?? child(pattern, 'fgColor'), theme);
  return { bold, ...(color ? { color } : {}), ...(fill ? { fill } : {}) };
}
