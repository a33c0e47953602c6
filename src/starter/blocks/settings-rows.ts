import type { Cell } from '../../workbook/port.ts';
import { settingSpecs } from '../../workbook/read/settings.ts';
import type { RowOfCells } from './table-rows.ts';

/** A row for every setting, with its default where `set` names no other value; the help as its note. */
export function settingsRows(set: Readonly<Record<string, Cell>>): RowOfCells<'settings'>[] {
  return Object.values(settingSpecs).map(({ column, standard }) => ({
    setting: column.header,
    value: set[column.header] ?? standard,
    note: column.help,
  }));
}
