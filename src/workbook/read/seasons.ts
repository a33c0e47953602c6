import type { Batch, Design, Fair, PlanLine, Sale } from '../../domain/book/book.ts';
import type { SellingPlace } from '../../domain/book/trade.ts';
import { findDesign, findFair, findItem, findPlace } from '../../domain/book/find.ts';
import { TAKES_BACK } from '../../domain/ledger/sale.ts';
import { readState } from '../../domain/book/words.ts';
import { nameKey } from '../../domain/kernel/names.ts';
import { isExcused, noted, type Reading } from './context.ts';
import type { Rows } from './rows.ts';
import { checkPartner } from './trade.ts';

export function readBatches(rows: Rows<'batches'>, reading: Reading): Map<string, Batch> {
  const batches = new Map<string, Batch>();
  for (const row of rows) {
    const made = madeIn(row, reading);
    checkLost(row, reading);
    if (made === undefined) continue;
    batches.set(nameKey(row.batch), {
      batch: row.batch,
      poured: row.poured,
      ...made,
      good: row.good,
      seconds: row.seconds,
      lost: row.lost,
      minutes: row.minutes,
      materialCost: row.materialCost,
      costPerBar: row.costPerBar,
      readyOn: row.readyOn,
      state: readState(row.state ?? ''),
      by: row.by ?? '',
      note: row.note ?? '',
    });
  }
  return batches;
}

/** What a batch made: bars of a design or, with neither, pieces shaped ahead (contract §2). */
function madeIn(
  row: Rows<'batches'>[number],
  reading: Reading,
): Pick<Batch, 'design' | 'bars'> | undefined {
  const { design: name, bars = 0 } = row;
  if (name === undefined && bars === 0) return { design: undefined, bars };
  if (name === undefined) {
    const ending = 'is blank. Fill it in; or where pieces were shaped ahead, type 0 under Bars';
    reading.findings.add('Batches', row.row, 'Design', ending);
    return undefined;
  }
  const design = designOf('Batches', { row: row.row, design: name }, reading);
  if (bars > 0) return design && { design, bars };
  reading.findings.add('Batches', row.row, 'Bars', 'is blank or 0. Fill it in');
  return undefined;
}

/** Good, seconds and lost are all the bars started. A blank Lost, which may come as 0, says nothing of them. */
function checkLost(row: Rows<'batches'>[number], reading: Reading): void {
  const { bars = 0, good = 0, seconds = 0, lost = 0 } = row;
  const rest = bars - good - seconds;
  if (lost === 0 || lost === rest) return;
  const what =
    rest < 0 ? 'Mend Good, Seconds or Bars' : `Type ${rest}, or mend Good, Seconds or Bars`;
  reading.findings.add(
    'Batches',
    row.row,
    'Lost',
    `is ${lost}, but Good ${good}, Seconds ${seconds} and Lost ${lost} are ${good + seconds + lost} and Bars is ${bars}. ${what}`,
  );
}

export function readFairs(rows: Rows<'fairs'>): Map<string, Fair> {
  return new Map(
    rows.map((row) => [
      nameKey(row.fair),
      {
        fair: row.fair,
        opens: row.opens,
        stallFee: row.stallFee ?? 0,
        travel: row.travel ?? 0,
        otherCost: row.otherCost ?? 0,
        hours: row.hours,
      },
    ]),
  );
}

export function readPlan(
  rows: Rows<'plan'>,
  fairs: ReadonlyMap<string, Fair>,
  reading: Reading,
): PlanLine[] {
  return rows.flatMap((row) => {
    const design = designOf('Plan', row, reading);
    checkFair('Plan', row, fairs, reading);
    if (design === undefined) return [];
    return [
      {
        planLine: row.planLine,
        design,
        bars: row.bars,
        readyBy: row.readyBy,
        fair: row.fair ?? '',
      },
    ];
  });
}

export function readSales(
  rows: Rows<'sales'>,
  fairs: ReadonlyMap<string, Fair>,
  reading: Reading,
): Sale[] {
  const barsOf = new Map(rows.map((row) => [nameKey(row.sale), row.bars]));
  return rows.flatMap((row) => {
    const sold = soldIn(row, reading);
    checkFair('Sales', row, fairs, reading);
    checkTakesBack(row, barsOf, reading);
    checkPartner('Sales', row.row, 'Taken by', row.takenBy, reading);
    const place = placeOf(row, reading);
    if (sold === undefined) return [];
    return [
      {
        sale: row.sale,
        soldOn: row.soldOn,
        ...sold,
        bars: row.bars,
        priceEach: row.priceEach,
        fair: row.fair ?? '',
        fees: row.fees,
        place,
        tender: row.tender,
        takenBy: row.takenBy ?? '',
      },
    ];
  });
}

/** Bars and fees below zero belong only to a line whose id names the sale that it takes back whole. */
function checkTakesBack(
  row: Rows<'sales'>[number],
  barsOf: ReadonlyMap<string, number>,
  reading: Reading,
): void {
  const { bars, fees = 0 } = row;
  if (bars > 0 && fees >= 0) return;
  const id = nameKey(row.sale);
  const original = id.endsWith(TAKES_BACK.toLowerCase())
    ? id.slice(0, -TAKES_BACK.length)
    : undefined;
  if (original !== undefined && bars < 0 && fees <= 0 && barsOf.get(original) === -bars) return;
  const [column, value] = bars > 0 ? ['Fees', fees] : ['Bars', bars];
  reading.findings.add(
    'Sales',
    row.row,
    column,
    `is ${value}. Type ${column === 'Fees' ? '0 or more' : 'more than 0'}; to take a sale back, repeat it with ${TAKES_BACK} after its id and its bars negative`,
  );
}

function designOf(
  table: string,
  row: { readonly row: number; readonly design: string },
  reading: Reading,
): Design | undefined {
  if (reading.findings.excused('Designs', row.design)) return undefined;
  return noted(reading, { table, row: row.row, column: 'Design' }, findDesign(reading, row.design));
}

/** What a sale sold: a design's good bars, or its seconds. */
function soldIn(
  row: Rows<'sales'>[number],
  reading: Reading,
): Pick<Sale, 'design' | 'isSecond'> | undefined {
  const item = findItem(reading, row.design);
  if (item.ok && item.value.kind === 'seconds' && !reading.designs.has(nameKey(row.design)))
    return { design: item.value.design, isSecond: true };
  const design = isExcused(row.design, reading) ? undefined : designOf('Sales', row, reading);
  return design && { design, isSecond: false };
}

function placeOf(row: Rows<'sales'>[number], reading: Reading): SellingPlace | undefined {
  if (row.place === undefined || reading.findings.excused('Places', row.place)) return undefined;
  const at = { table: 'Sales', row: row.row, column: 'Place' };
  return noted(reading, at, findPlace(reading.places, row.place));
}

function checkFair(
  table: string,
  row: { readonly row: number; readonly fair: string | undefined },
  fairs: ReadonlyMap<string, Fair>,
  reading: Reading,
): void {
  if (row.fair === undefined || reading.findings.excused('Fairs', row.fair)) return;
  noted(reading, { table, row: row.row, column: 'Fair' }, findFair(fairs, row.fair));
}
