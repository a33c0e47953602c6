import { readDay } from '../../domain/kernel/day.ts';
import { nameKey } from '../../domain/kernel/names.ts';
import type { Column } from '../column.ts';
import type { Cell, TableData, ValueColumn, ValueSheet } from '../port.ts';
import { type TableKind, tables } from '../schema.ts';

/** One table as a sheet of values; undefined where it holds nothing. */
export function valueSheet(
  kind: TableKind,
  { headers, rows }: TableData,
  withCosts: boolean,
): ValueSheet | undefined {
  if (!withCosts && allOfCosts.includes(kind)) return undefined;
  const shown = headers.flatMap((header, at) => {
    const column = columnOf(kind, header);
    return withCosts || (column !== undefined && tellsNoCost(column))
      ? [{ header, column, at }]
      : [];
  });
  const filled = rows.filter(
    (row) =>
      row.some((cell) => cell !== '') &&
      (withCosts || kind !== 'settings' || isPlain(row, headers)),
  );
  if (shown.length === 0 || filled.length === 0) return undefined;
  return {
    name: tables[kind].name,
    lines: [],
    table: `Partner_${tables[kind].name}`,
    columns: shown.map(({ header, column }): ValueColumn => ({
      header,
      format: column?.format ?? 'text',
    })),
    rows: filled.map((row) => shown.map(({ column, at }) => asValue(row[at] ?? '', column))),
  };
}

const columnOf = (kind: TableKind, header: string): Column<unknown> | undefined =>
  Object.values(tables[kind].columns).find((known) => nameKey(known.header) === nameKey(header));

/** Tables that say nothing but who one buys from, and for how much. */
const allOfCosts: readonly TableKind[] = ['suppliers', 'priceBreaks'];

/** Terms tell costs too, and notes are free text: they may say what something cost, or who sold it. */
const tellsNoCost = ({ header, format }: Column<unknown>): boolean =>
  format !== 'money' && !['Supplier', 'Note', 'Commission %', 'Fee %', 'Share %'].includes(header);

/** Settings that say nothing of rates and fees; an unknown one may. */
const plainSettings = [
  'Currency',
  'Valuation',
  'Service %',
  'Scale step g',
  'Prices include tax',
  'History days',
  'Buffer days',
  'Skin stay',
  'Minutes per day',
  'Rest days',
].map(nameKey);

function isPlain(row: readonly Cell[], headers: readonly string[]): boolean {
  const at = headers.findIndex(
    (header) => nameKey(header) === nameKey(tables.settings.columns.setting.header),
  );
  return plainSettings.includes(nameKey(String(row[at] ?? '')));
}

/** A day as a serial number, so that every program shows and sorts it alike. */
const asValue = (cell: Cell, column: Column<unknown> | undefined): Cell =>
  column?.format === 'date' ? (readDay(cell) ?? cell) : cell;
