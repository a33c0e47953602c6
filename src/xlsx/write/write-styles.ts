import { oncePer } from '../../domain/kernel/once-per.ts';
import type { NewHighlight, NewStyle } from './new-workbook.ts';
import { builtInFormats } from '../parts/number-formats.ts';
import { DECLARATION, MAIN } from '../parts/namespaces.ts';
import { escapeXml } from '../xml/xml-text.ts';

/** Collects the styles a workbook uses and writes xl/styles.xml. */
export interface StyleSheet {
  /** The number that cells give as their `s`. */
  style(style: NewStyle | undefined): number;
  /** The number of a highlight's format. */
  highlight(highlight: NewHighlight): number;
  xml(): string;
}

/** Equal styles share one number; number 0 is the plain cell. */
export function styleSheet(font: { readonly name: string; readonly size: number }): StyleSheet {
  const formats = numbered(164);
  const fonts = numbered(0);
  const fills = numbered(0);
  const borders = numbered(0);
  const xfs = numbered(0);
  const dxfs = numbered(0);
  fonts.add(fontXml({}, font));
  fills.add('<fill><patternFill patternType="none"/></fill>');
  fills.add('<fill><patternFill patternType="gray125"/></fill>');
  borders.add(borderXml({}));
  const formatId = (code: string) => {
    const known = Object.entries(builtInFormats).find(([, format]) => format === code);
    return known ? Number(known[0]) : formats.add(code);
  };
  // A long table gives each of its cells the same few styles.
  const numberOf = oncePer((given: NewStyle) => {
    const format = formatId(given.numberFormat ?? 'General');
    const fontId = fonts.add(fontXml(given, font));
    const fillId = given.fill ? fills.add(fillXml(given.fill)) : 0;
    const borderId = borders.add(borderXml(given));
    return xfs.add(xfXml(format, fontId, fillId, borderId, alignmentXml(given)));
  });
  const style = (given: NewStyle = {}) => numberOf(given);
  style();
  const xml = () =>
    `${DECLARATION}<styleSheet xmlns="${MAIN}">${formatsXml(formats.all())}` +
    `${list('fonts', fonts.all())}${list('fills', fills.all())}${list('borders', borders.all())}` +
    '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
    `${list('cellXfs', xfs.all())}` +
    '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>' +
    `${list('dxfs', dxfs.all())}</styleSheet>`;
  return { style, highlight: (highlight) => dxfs.add(dxfXml(highlight)), xml };
}

/** Texts numbered in the order they first came. */
function numbered(first: number) {
  const numbers = new Map<string, number>();
  return {
    add(text: string): number {
      const number = numbers.get(text) ?? first + numbers.size;
      numbers.set(text, number);
      return number;
    },
    all: () => [...numbers.keys()],
  };
}

function list(name: string, items: readonly string[]): string {
  return `<${name} count="${items.length}">${items.join('')}</${name}>`;
}

function formatsXml(codes: readonly string[]): string {
  if (codes.length === 0) return '';
  const each = codes.map(
    (code, index) => `<numFmt numFmtId="${164 + index}" formatCode="${escapeXml(code)}"/>`,
  );
  return list('numFmts', each);
}

function fontXml(style: NewStyle, font: { readonly name: string; readonly size: number }): string {
  return (
    `<font>${style.bold ? '<b/>' : ''}${style.italic ? '<i/>' : ''}` +
    `<sz val="${style.fontSize ?? font.size}"/>${style.color ? colorXml('color', style.color) : ''}` +
    `<name val="${escapeXml(font.name)}"/><family val="2"/></font>`
  );
}

function fillXml(color: string): string {
  return `<fill><patternFill patternType="solid">${colorXml('fgColor', color)}<bgColor indexed="64"/></patternFill></fill>`;
}

function borderXml({ lineBelow, lineAround }: NewStyle): string {
  const side = (name: string, color: string | undefined) =>
    color ? `<${name} style="thin">${colorXml('color', color)}</${name}>` : `<${name}/>`;
  const around = ['left', 'right', 'top'].map((name) => side(name, lineAround)).join('');
  return `<border>${around}${side('bottom', lineBelow ?? lineAround)}<diagonal/></border>`;
}

function xfXml(format: number, font: number, fill: number, border: number, alignment: string) {
  const attributes =
    `numFmtId="${format}" fontId="${font}" fillId="${fill}" borderId="${border}" xfId="0"` +
    `${format ? ' applyNumberFormat="1"' : ''}${font ? ' applyFont="1"' : ''}` +
    `${fill ? ' applyFill="1"' : ''}${border ? ' applyBorder="1"' : ''}`;
  return alignment
    ? `<xf ${attributes} applyAlignment="1">${alignment}</xf>`
    : `<xf ${attributes}/>`;
}

function alignmentXml({ horizontal, vertical, wrap, indent }: NewStyle): string {
  const attributes =
    `${horizontal ? ` horizontal="${horizontal}"` : ''}${vertical ? ` vertical="${vertical}"` : ''}` +
    `${wrap ? ' wrapText="1"' : ''}${indent ? ` indent="${indent}"` : ''}`;
  return attributes ? `<alignment${attributes}/>` : '';
}

function dxfXml({ fill, color, bold }: NewHighlight): string {
  const font = `${bold ? '<b/>' : ''}${color ? colorXml('color', color) : ''}`;
  const fillPart = fill
    ? `<fill><patternFill patternType="solid">${colorXml('fgColor', fill)}${colorXml('bgColor', fill)}</patternFill></fill>`
    : '';
  return `<dxf>${font ? `<font>${font}</font>` : ''}${fillPart}</dxf>`;
}

/** A colour element from "#RRGGBB". */
export function colorXml(name: string, color: string): string {
  if (!/^#[0-9A-Fa-f]{6}$/.test(color)) throw new Error(`"${color}" is no colour like #AABBCC`);
  return `<${name} rgb="FF${color.slice(1).toUpperCase()}"/>`;
}
