import { type Day, isoDate } from '../../domain/kernel/day.ts';
import type { TableData } from '../port.ts';
import { tables, type TableKind, tableKinds } from '../schema.ts';
import { answersSheet } from './answered.ts';
import { calendarSheet } from './calendar-sheet.ts';
import { costingSheet } from './costing-sheet.ts';
import { lanternQuay } from './demo/designs.ts';
import { demoTables } from './demo/demo-tables.ts';
import { lanternMosaic } from './demo/mosaic.ts';
import { demoFairQuestion, demoSet, demoSupposed } from './demo/questions.ts';
import { movedTo } from './demo/moved-days.ts';
import { demoDay, firstReadyBy } from './demo/season.ts';
import { batchCheckSheet } from './batch-check-sheet.ts';
import { fairPricesSheet } from './fair-prices-sheet.ts';
import { fairResultsSheet } from './fair-results-sheet.ts';
import { forecastSheet } from './forecast-sheet.ts';
import { labelSheet } from './label-sheet.ts';
import { makeListsSheet } from './lists-sheet.ts';
import { mosaicSheet } from './mosaic-sheet.ts';
import { tableSheets } from './names.ts';
import { pricingSheet } from './pricing-sheet.ts';
import { recallSheet } from './recall-sheet.ts';
import { reorderCheckSheet } from './reorder-check-sheet.ts';
import { reorderSheet } from './reorder-sheet.ts';
import { seasonSheet } from './season-sheet.ts';
import { settingsRows } from './settings-rows.ts';
import type { StarterSheet } from './sheet.ts';
import { shoppingSheet } from './shopping-sheet.ts';
import { startSheet } from './start-sheet.ts';
import { tableData } from './table-rows.ts';
import { tableSheet } from './table-sheet.ts';
import { weighSheet } from './weigh-sheet.ts';
import { nothingSupposed, whatIfSheet } from './what-if-sheet.ts';

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
