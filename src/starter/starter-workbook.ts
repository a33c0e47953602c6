import { type Day, isoDate } from '../domain/kernel/day.ts';
import type { TableData } from '../workbook/port.ts';
import { tables, type TableKind, tableKinds } from '../workbook/schema.ts';
import { answersSheet } from './blocks/answered.ts';
import { calendarSheet } from './sheets/calendar-sheet.ts';
import { costingSheet } from './sheets/costing-sheet.ts';
import { lanternQuay } from './demo/designs.ts';
import { demoTables } from './demo/demo-tables.ts';
import { lanternMosaic } from './demo/mosaic.ts';
import { demoFairQuestion, demoSet, demoSupposed } from './demo/questions.ts';
import { movedTo } from './demo/moved-days.ts';
import { demoDay, firstReadyBy } from './demo/season.ts';
import { batchCheckSheet } from './sheets/batch-check-sheet.ts';
import { fairPricesSheet } from './sheets/fair-prices-sheet.ts';
import { fairResultsSheet } from './sheets/fair-results-sheet.ts';
import { forecastSheet } from './sheets/forecast-sheet.ts';
import { labelSheet } from './sheets/label-sheet.ts';
import { makeListsSheet } from './sheets/lists-sheet.ts';
import { mosaicSheet } from './sheets/mosaic-sheet.ts';
import { tableSheets } from './cells/names.ts';
import { pricingSheet } from './sheets/pricing-sheet.ts';
import { recallSheet } from './sheets/recall-sheet.ts';
import { reorderCheckSheet } from './sheets/reorder-check-sheet.ts';
import { reorderSheet } from './sheets/reorder-sheet.ts';
import { seasonSheet } from './sheets/season-sheet.ts';
import { settingsRows } from './blocks/settings-rows.ts';
import type { StarterSheet } from './cells/sheet.ts';
import { shoppingSheet } from './sheets/shopping-sheet.ts';
import { startSheet } from './sheets/start-sheet.ts';
import { tableData } from './blocks/table-rows.ts';
import { tableSheet } from './sheets/table-sheet.ts';
import { weighSheet } from './sheets/weigh-sheet.ts';
import { nothingSupposed, whatIfSheet } from './sheets/what-if-sheet.ts';

/** A whole workbook as data, for a file to be made of it. */
export interface StarterWorkbook {
  /** The day that counts as today in the answers kept in the file. */
  readonly day: Day;
  readonly sheets: readonly StarterSheet[];
  readonly tables: readonly TableData[];
}

/** The invented workshop with a year of its ledger, its season about to begin on `today`. */
export function demoWorkbook(today: Day = demoDay): StarterWorkbook {
  const data = demoTables(today);
  return assemble(today, data, [
    startSheet(true),
    weighSheet(lanternQuay, 14),
    costingSheet(lanternQuay),
    pricingSheet(demoSet),
    fairPricesSheet(demoFairQuestion),
    fairResultsSheet(),
    batchCheckSheet('B-059'),
    reorderSheet(),
    reorderCheckSheet('Clear base'),
    seasonSheet(),
    shoppingSheet(),
    calendarSheet(movedTo(today, firstReadyBy)),
    forecastSheet(lastOfMonthBefore(today)),
    whatIfSheet(demoSupposed),
    labelSheet(lanternQuay),
    recallSheet('L-056'),
    mosaicSheet(lanternMosaic),
  ]);
}

/** The same sheets for a maker's own: each table blank, Settings with its defaults. */
export function emptyWorkbook(today: Day = demoDay): StarterWorkbook {
  const data = tableKinds.map((kind) =>
    kind === 'settings' ? tableData('settings', settingsRows({})) : tableData(kind, [{}]),
  );
  return assemble(today, data, [
    startSheet(false),
    weighSheet('', 12),
    costingSheet(''),
    pricingSheet({ bars: [], packaging: '', margin: '' }),
    fairPricesSheet({ fair: '', design: '', barsExpected: '', lowestPrice: '' }),
    fairResultsSheet(),
    batchCheckSheet(''),
    reorderSheet(),
    reorderCheckSheet(''),
    seasonSheet(),
    shoppingSheet(),
    calendarSheet(''),
    forecastSheet(''),
    whatIfSheet(nothingSupposed),
    labelSheet(''),
    recallSheet(''),
    mosaicSheet({ pattern: [], shades: {} }),
  ]);
}

/** The last day of the month before a day's own. */
const lastOfMonthBefore = (day: Day): Day => day - Number(isoDate(day).slice(-2));

function assemble(
  day: Day,
  data: readonly TableData[],
  answering: readonly StarterSheet[],
): StarterWorkbook {
  const dataOf = (kind: TableKind): TableData => {
    const found = data.find(({ name }) => name === tables[kind].name);
    if (found === undefined) throw new Error(`No rows are given for the table ${kind}`);
    return found;
  };
  const typed = tableSheets.map(({ kind }) => tableSheet(kind, dataOf(kind)));
  const asks = answering.flatMap((sheet) => sheet.asks ?? []);
  const behind = [makeListsSheet(), answersSheet(asks)];
  return { day, sheets: [...answering, ...typed, ...behind], tables: data };
}
