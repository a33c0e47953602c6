import { quoted } from '../../domain/kernel/names.ts';
import { type AmountOf, readAmount } from '../../domain/measure/typed-amount.ts';
import { type Measure, stockUnits } from '../../domain/measure/units.ts';
import type { TableKind } from '../schema.ts';

/** What an item is measured in; undefined where no item has that name. */
export type AmountOfItem = (name: string) => AmountOf | undefined;

/** What a column's numbers are in: a unit that its header names, or the column that says it in each row. */
type InColumn = AmountOf | { readonly from: string };

const g: AmountOf = { kind: 'quantity', unit: 'g' };
const minutes: AmountOf = { kind: 'time', unit: 'minutes' };
const hours: AmountOf = { kind: 'time', unit: 'hours' };
const days: AmountOf = { kind: 'time', unit: 'days' };

const inColumns: Partial<Readonly<Record<TableKind, Readonly<Record<string, InColumn>>>>> = {
  materials: { packSize: { from: 'unit' }, leadDays: days, leadDaysSd: days },
  lots: { quantity: { from: 'material' } },
  moves: { quantity: { from: 'material' } },
  molds: { fillG: g, scrapeG: g, setMinutes: minutes },
  colours: { amount: { from: 'measure' } },
  designs: { labourMinutes: minutes, setupMinutes: minutes, netG: g, handsOffHours: hours },
  layers: { perBar: { from: 'per' } },
  batches: { minutes },
  fairs: { hours },
  suppliers: { leadDays: days },
};

const measures: readonly string[] = [...stockUnits, 'drops'] satisfies Measure[];

/**
 * What to type instead of an amount with its unit, as the end of a sentence that begins with the cell: `10 lb` in a
 * Quantity of grams. Undefined where the cell holds none, or where the column's unit is not known. The row's other
 * cells are as they were read.
 */
export function numberToType(
  kind: TableKind,
  key: string,
  cell: unknown,
  row: Readonly<Record<string, unknown>>,
  amountOfItem: AmountOfItem,
): string | undefined {
  if (typeof cell !== 'string' || !/\d.*\p{L}/u.test(cell)) return undefined;
  const amountOf = inRow(inColumns[kind]?.[key], row, amountOfItem);
  if (amountOf === undefined) return undefined;
  const [, sign = '', typed = ''] = /^\s*([-−]?)\s*(.*)$/su.exec(cell) ?? [];
  const read = readAmount(typed, amountOf);
  if (!read.ok) return `is ${quoted(cell)}. ${read.failure.sentence}`;
  const { value, conversion } = read.value;
  const how = conversion === undefined ? ' alone' : `: ${conversion}`;
  return `is ${quoted(cell)}, which is not a number. Type ${sign && '-'}${value.toFixed()}${how}`;
}

function inRow(
  inColumn: InColumn | undefined,
  row: Readonly<Record<string, unknown>>,
  amountOfItem: AmountOfItem,
): AmountOf | undefined {
  if (inColumn === undefined || 'kind' in inColumn) return inColumn;
  const said = row[inColumn.from];
  if (typeof said !== 'string') return undefined;
  if (inColumn.from === 'material') return amountOfItem(said);
  return measures.includes(said) ? { kind: 'quantity', unit: said as Measure } : undefined;
}
