import type { Attributes } from '../xml/xml-walk.ts';
import { child, descendants, parseXml, type XmlElement } from '../xml/xml-tree.ts';

/** The theme's twelve colours as "RRGGBB", in the order that cell styles count them. */
export type ThemeColors = readonly string[];

/** Colours by number, 8 to 63 (ECMA-376 part 1, 18.8.27; 0 to 7 repeat 8 to 15). */
const INDEXED = `000000 FFFFFF FF0000 00FF00 0000FF FFFF00 FF00FF 00FFFF 800000 008000 000080 808000
  800080 008080 C0C0C0 808080 9999FF 993366 FFFFCC CCFFFF 660066 FF8080 0066CC CCCCFF 000080 FF00FF
  FFFF00 00FFFF 800080 800000 008080 0000FF 00CCFF CCFFFF CCFFCC FFFF99 99CCFF FF99CC CC99FF FFCC99
  3366FF 33CCCC 99CC00 FFCC00 FF9900 FF6600 666699 969696 003366 339966 003300 333300 993300 993366
  333399 333333`.split(/\s+/);

/** Excel's theme when the file has none (Office, 2013 onwards), from memory. */
const OFFICE =
  'FFFFFF 000000 E7E6E6 44546A 4472C4 ED7D31 A5A5A5 FFC000 5B9BD5 70AD47 0563C1 954F72'.split(' ');

const ORDER =
  'lt1 dk1 lt2 dk2 accent1 accent2 accent3 accent4 accent5 accent6 hlink folHlink'.split(' ');

/** Reads a theme part's colours; `undefined` gives Office's own. */
export function readTheme(part: string | undefined, source: string): ThemeColors {
  if (part === undefined) return OFFICE;
  const scheme = descendants(parseXml(part, source), 'clrScheme')[0];
  return ORDER.map((name, index) => {
    const attributes = child(scheme, name)?.children[0]?.attributes;
    return (
      attributes?.['lastClr'] ??
      attributes?.['val'] ??
      OFFICE[index] ??
      '000000'
    ).toUpperCase();
  });
}

/** "#RRGGBB" of a colour element (rgb, theme with tint, or indexed); undefined when it is automatic. */
export function readColor(
  element: Pick<XmlElement, 'attributes'> | undefined,
  theme: ThemeColors,
): string | undefined {
  const base = element && baseColor(element.attributes, theme);
  if (base === undefined || !/^[0-9A-F]{6}$/.test(base)) return undefined;
  return `#${tinted(base, Number(element?.attributes['tint'] ?? 0))}`;
}

function baseColor(attributes: Attributes, theme: ThemeColors): string | undefined {
  if (attributes['rgb']) return attributes['rgb'].slice(-6).toUpperCase();
  if (attributes['theme']) return theme[Number(attributes['theme'])];
  const index = Number(attributes['indexed'] ?? Number.NaN);
  return INDEXED[index < 8 ? index : index - 8];
}

/** Lightens (tint > 0) or darkens a colour; on grey and pure hues this equals the format's HLS rule. */
function tinted(color: string, tint: number): string {
  if (!tint) return color;
  const channels = [0, 2, 4].map((at) => Number.parseInt(color.slice(at, at + 2), 16));
  return channels
    .map((value) => (tint < 0 ? value * (1 + tint) : value + (255 - value) * tint))
    .map((value) =>
      Math.min(255, Math.max(0, Math.round(value)))
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')
    .toUpperCase();
}
