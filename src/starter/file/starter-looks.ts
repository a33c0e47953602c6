import type { NewStyle } from '../../xlsx/write/new-workbook.ts';
import type { CellFormat, SheetLook, Role, SheetGroup } from '../cells/sheet.ts';

/** The starter workbook's own colours: slate for words, sea green for heads, sand where one types. */
const ink = '#24383F';
const quiet = '#5E7177';
const sea = '#DCEAE7';
const seaInk = '#1F5A57';
const sand = '#FFF4DB';
const sandLine = '#D9C08A';
const line = '#C5D2D3';

export const short = { fill: '#FBE0CF', color: '#7A3310' } as const;
/** Text that only says again what the row above said. */
export const repeated = { color: '#B4C0C3' } as const;
/** Earns money; bold as well, so that it stands out without colour. */
export const gain = { fill: '#DDEFE2', color: '#1F5A3A', bold: true } as const;
/** Sea, lantern and dusk: apart in lightness as well as in hue. */
export const seriesColors = ['#2F7F86', '#D98E2B', '#5B4A7A'] as const;

export const tabColors: Readonly<Record<SheetGroup, string>> = {
  start: '#24383F',
  answers: '#2F7F86',
  yours: '#D9B25F',
  ledger: '#7B8C93',
  behind: '#C5D2D3',
};

const roles: Readonly<Record<Role, NewStyle>> = {
  title: { bold: true, fontSize: 18, color: ink, vertical: 'center' },
  heading: { bold: true, fontSize: 12, color: seaInk, lineBelow: line, vertical: 'center' },
  note: { color: quiet, fontSize: 10, vertical: 'center' },
  aside: { color: quiet, fontSize: 10, vertical: 'center', horizontal: 'left', indent: 1 },
  label: { color: ink, vertical: 'center' },
  input: {
    fill: sand,
    lineAround: sandLine,
    color: ink,
    horizontal: 'left',
    vertical: 'center',
  },
  answer: { bold: true, color: ink, lineBelow: line, horizontal: 'left', vertical: 'center' },
  header: { bold: true, fill: sea, color: seaInk, vertical: 'center' },
  plain: { color: ink, vertical: 'center' },
  total: { bold: true, color: ink, lineBelow: line, vertical: 'center' },
  strong: { bold: true, color: ink, vertical: 'center' },
  headline: { bold: true, fontSize: 16, color: ink, horizontal: 'center', vertical: 'center' },
  centred: { color: ink, horizontal: 'center', vertical: 'center' },
  day: { bold: true, color: seaInk, fill: sea, horizontal: 'left', vertical: 'center', indent: 1 },
  diary: { color: ink, fontSize: 10, vertical: 'top', wrap: true, lineBelow: line },
  wrapped: { color: ink, vertical: 'top', wrap: true, horizontal: 'left' },
  tile: { horizontal: 'center', vertical: 'center', lineAround: '#FFFFFF', fill: sand, color: ink },
};

const formats: Readonly<Record<CellFormat, string>> = {
  text: '@',
  number: 'General',
  whole: '#,##0',
  money: '#,##0.00',
  percent: 'General',
  date: 'yyyy-mm-dd',
  grams: '#,##0.0',
  stock: '#,##0.0;"short by "#,##0.0',
  fine: '#,##0.0##',
  share: '0 %',
  general: 'General',
  dayOfMonth: 'd',
  unseen: ';;;',
};

export const helpStyle: NewStyle = {
  color: quiet,
  fontSize: 9,
  vertical: 'bottom',
  wrap: true,
  horizontal: 'left',
  indent: 1,
};

/** Words keep off the number that ends right before them. */
const besideNumbers: NewStyle = { horizontal: 'left', indent: 1 };

/** A column's header stands over its numbers' side. */
export const headerOver = (format: CellFormat): NewStyle => ({
  ...roles.header,
  ...(isText(format) ? besideNumbers : { horizontal: 'right' }),
});

export function styleOf({ role, format }: SheetLook): NewStyle {
  if (role === 'header') return headerOver(format ?? 'text');
  if (role === 'plain' && format !== undefined) return bodyStyle(format);
  if (role === 'strong' && format !== undefined) return { ...bodyStyle(format), bold: true };
  return { ...roles[role], ...(format === undefined ? {} : { numberFormat: formats[format] }) };
}

/** A cell of a table or of a spilled list. */
export const bodyStyle = (format: CellFormat): NewStyle => ({
  numberFormat: formats[format],
  // Not every grid knows a format that shows nothing, so what is unseen is white as well.
  color: format === 'unseen' ? '#FFFFFF' : ink,
  vertical: 'center',
  ...(isText(format) ? besideNumbers : {}),
});

const isText = (format: CellFormat): boolean => format === 'text' || format === 'general';
