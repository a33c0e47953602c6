import { readColor, type Theme } from './colors.ts';
import type { StyleImage } from './image.ts';
import { builtInFormats } from './number-formats.ts';
import { child, childrenOf, isOn, parseXml, type XmlElement } from './xml-tree.ts';

export const plainStyle: StyleImage = {
  numberFormat: 'General',
  bold: false,
  italic: false,
  wrap: false,
};

/** The cell styles of xl/styles.xml in the order that cells count them. */
export function readStyles(part: string, source: string, theme: Theme): readonly StyleImage[] {
  const root = parseXml(part, source);
  const formats = new Map(
    childrenOf(child(root, 'numFmts'), 'numFmt').map(({ attributes }) => [
      Number(attributes['numFmtId']),
      attributes['formatCode'] ?? 'General',
    ]),
  );
  const fonts = child(root, 'fonts')?.children ?? [];
  const fills = child(root, 'fills')?.children ?? [];
  return childrenOf(child(root, 'cellXfs'), 'xf').map((xf) => {
    const format = Number(xf.attributes['numFmtId'] ?? 0);
    return {
      ...plainStyle,
      numberFormat: formats.get(format) ?? builtInFormats[format] ?? 'General',
      ...fontOf(fonts[Number(xf.attributes['fontId'] ?? 0)], theme),
      ...fillOf(fills[Number(xf.attributes['fillId'] ?? 0)], theme),
      ...alignmentOf(child(xf, 'alignment')),
    };
  });
}

function fontOf(font: XmlElement | undefined, theme: Theme): Partial<StyleImage> {
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

function fillOf(fill: XmlElement | undefined, theme: Theme): Partial<StyleImage> {
  const pattern = child(fill, 'patternFill');
  if ((pattern?.attributes['patternType'] ?? 'none') === 'none') return {};
  const color = readColor(child(pattern, 'fgColor'), theme);
  return color ? { fill: color } : {};
}

function alignmentOf(alignment: XmlElement | undefined): Partial<StyleImage> {
  const horizontal = alignment?.attributes['horizontal'];
  const known = horizontal === 'left' || horizontal === 'center' || horizontal === 'right';
  return { wrap: isOn(alignment?.attributes['wrapText']), ...(known ? { horizontal } : {}) };
}
