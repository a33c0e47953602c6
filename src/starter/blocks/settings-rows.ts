import type { Cell } from '../../workbook/port.ts';
import { FORMAT, settingSpecs } from '../../workbook/read/settings.ts';
import type { RowOfCells } from './table-rows.ts';

/** A row for every setting: what `set` says, else its default; a new workbook has the newest format. */
export function settingsRows(set: Readonly<Record<string, Cell>>): RowOfCells<'settings'>[] {
  return Object.values(settingSpecs).map(({ column, standard }) => ({
    setting: column.header,
    value: set[column.header] ?? (column === settingSpecs.format.column ? FORMAT : standard),
    note: column.help,
  }));
}
