import type { TableData } from '../port.ts';
import { tables, type TableKind, tableKinds } from '../schema.ts';
import { costingSheet } from './costing-sheet.ts';
import { lanternQuay } from './demo/designs.ts';
import { demoTables } from './demo/demo-tables.ts';
import { lanternMosaic } from './demo/mosaic.ts';
import { demoDay } from './demo/season.ts';
import { makeListsSheet } from './lists-sheet.ts';
import { mosaicSheet } from './mosaic-sheet.ts';
import { tableSheets } from './names.ts';
import { reorderSheet } from './reorder-sheet.ts';
import { settingsRows } from './settings-rows.ts';
import type { StarterSheet } from './sheet.ts';
import { startSheet } from './start-sheet.ts';
import { tableData } from './table-rows.ts';
import { tableSheet } from './table-sheet.ts';
import { weighSheet } from './weigh-sheet.ts';

/** A whole workbook as data, for the build to write. */
export interface StarterWorkbook {
  readonly sheets: readonly StarterSheet[];
  readonly tables: readonly TableData[];
}

/** The invented workshop with a year of its ledger. */
export function demoWorkbook(): StarterWorkbook {
  const data = demoTables();
  return assemble(data, [
    startSheet(true),
    weighSheet(lanternQuay, 12),
    costingSheet(lanternQuay, demoDay),
    reorderSheet(demoDay),
    mosaicSheet(lanternMosaic),
  ]);
}

/** The same sheets for a maker's own: each table blank, Settings with its defaults. */
export function emptyWorkbook(): StarterWorkbook {
  const data = tableKinds.map((kind) =>
    kind === 'settings' ? tableData('settings', settingsRows({})) : tableData(kind, [{}]),
  );
  return assemble(data, [
    startSheet(false),
    weighSheet('', 12),
    costingSheet('', ''),
    reorderSheet(''),
    mosaicSheet({ pattern: [], shades: {} }),
  ]);
}

function assemble(data: readonly TableData[], answering: readonly StarterSheet[]): StarterWorkbook {
  const dataOf = (kind: TableKind): TableData => {
    const found = data.find(({ name }) => name === tables[kind].name);
    if (found === undefined) throw new Error(`No rows are given for the table ${kind}`);
    return found;
  };
  const typed = tableSheets.map(({ kind }) => tableSheet(kind, dataOf(kind)));
  return { sheets: [...answering, ...typed, makeListsSheet()], tables: data };
}
