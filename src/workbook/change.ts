import type { Lot } from '../domain/book/book.ts';
import type { Repair } from '../domain/health/finding.ts';
import type { NewBatch, MoveLine, BatchPosting } from '../domain/ledger/posting.ts';
import type { NewLot } from '../domain/ledger/receive.ts';
import type { NewSale, SalesPosting } from '../domain/ledger/sale.ts';
import type { StocktakePosting } from '../domain/ledger/stocktake.ts';
import type { UndoPosting } from '../domain/ledger/undo-batch.ts';
import { type Exact, toCell } from '../domain/kernel/exact.ts';
import { nameKey } from '../domain/kernel/names.ts';
import { all, andThen, answer, type Result, wrong } from '../domain/kernel/result.ts';
import type { TableNames } from './find-tables.ts';
import { idKey, rowsById } from './ids.ts';
import type { Append, Change, Removal, RowToWrite, TableData } from './port.ts';
import { type TableKind, tables } from './schema.ts';

/** The change that recording a pour makes: its moves and its batch line, together or not at all. */
export function changeForBatch(posting: BatchPosting, names: TableNames): Result<Change> {
  const moves = appendTo('moves', 'entry', posting.moves.map(moveRow), names);
  const batches = appendTo('batches', 'batch', [batchRow(posting.batch)], names);
  if (!moves.ok) return moves;
  if (!batches.ok) return batches;
  return answer({ appends: [moves.value, batches.value], updates: [] });
}

/** The change that undoing a batch makes: its reversals, and the batch's State. */
export function changeForUndo(posting: UndoPosting, names: TableNames): Result<Change> {
  const moves = appendTo('moves', 'entry', posting.moves.map(moveRow), names);
  if (!moves.ok) return moves;
  const batches = names.get('batches');
  const { batch, state } = tables.batches.columns;
  const update = {
    idColumn: batch.header,
    id: posting.batch,
    set: { [state.header]: posting.state },
  };
  const hasState =
    batches?.headers.some((header) => nameKey(header) === nameKey(state.header)) === true;
  return answer({
    appends: [moves.value],
    updates: hasState ? [{ ...update, table: batches.name }] : [],
  });
}

/** The change that recording or taking back a selling day makes. */
export function changeForSales(posting: SalesPosting, names: TableNames): Result<Change> {
  const moves = appendTo('moves', 'entry', posting.moves.map(moveRow), names);
  const sales = appendTo('sales', 'sale', posting.sales.map(saleRow), names);
  if (!moves.ok) return moves;
  if (!sales.ok) return sales;
  return answer({ appends: [moves.value, sales.value], updates: [] });
}

/** The change that receiving a delivery makes. */
export function changeForDelivery(lots: readonly NewLot[], names: TableNames): Result<Change> {
  const append = appendTo('lots', 'lot', lots.map(lotRow), names);
  return append.ok ? answer({ appends: [append.value], updates: [] }) : append;
}

/**
 * The change that takes lots back: each one's row in Lots is cleared in all columns that we know, so that
 * it is as if it never came. Columns of the maker's own stay.
 */
export function changeForUndoneLots(lots: readonly Lot[], names: TableNames): Result<Change> {
  const table = names.get('lots');
  const { name, columns } = tables.lots;
  const known = new Set(Object.values(columns).map(({ header }) => nameKey(header)));
  const headers = [...(table?.headers.entries() ?? [])].filter(([, header]) =>
    known.has(nameKey(header)),
  );
  const idAt = headers.find(([, header]) => nameKey(header) === nameKey(columns.lot.header));
  if (table === undefined || idAt === undefined)
    return wrong(`The workbook has no ${name} table to write to. Add one with its headers.`);
  const [at, idColumn] = idAt;
  const rows = rowsById(table.rows.map((row) => row[at]));
  const removals = lots.map(({ lot }): Result<Removal> => {
    const row = table.rows[rows.get(idKey(lot))?.[0] ?? -1];
    if (row === undefined) return wrong(`Lot ${lot} is no longer in ${name}.`);
    const was = Object.fromEntries(headers.map(([place, header]) => [header, row[place] ?? '']));
    return answer({ table: table.name, idColumn, id: lot, was });
  });
  return andThen(all(removals), (cleared) =>
    answer({ appends: [], updates: [], removals: cleared }),
  );
}

/** The change that a stocktake makes, and whatever else only adds lines to the ledger. */
export function changeForStocktake(
  posting: Pick<StocktakePosting, 'moves'>,
  names: TableNames,
): Result<Change> {
  const moves = appendTo('moves', 'entry', posting.moves.map(moveRow), names);
  return moves.ok ? answer({ appends: [moves.value], updates: [] }) : moves;
}

/** The change that a repair of the health check makes: lines are added, none is changed. */
export function changeForRepair({ moves, batches }: Repair, names: TableNames): Result<Change> {
  const appends = all([
    ...(moves.length === 0 ? [] : [appendTo('moves', 'entry', moves.map(moveRow), names)]),
    ...(batches.length === 0 ? [] : [appendTo('batches', 'batch', batches.map(batchRow), names)]),
  ]);
  return appends.ok ? answer({ appends: appends.value, updates: [] }) : appends;
}

function appendTo(
  kind: TableKind,
  idKey: string,
  rows: readonly RowToWrite[],
  names: TableNames,
): Result<Append> {
  const table = names.get(kind);
  const spec = tables[kind];
  if (table === undefined)
    return wrong(`The workbook has no ${spec.name} table to write to. Add one with its headers.`);
  const idColumn = Object.entries(spec.columns).find(([key]) => key === idKey)?.[1].header ?? '';
  return answer({ table: table.name, idColumn, rows: rows.map((row) => knownColumns(row, table)) });
}

/** Optional columns that this workbook's table has done without are not written. */
function knownColumns(row: RowToWrite, table: TableData): RowToWrite {
  return Object.fromEntries(
    Object.entries(row).filter(([header]) =>
      table.headers.some((known) => nameKey(known) === nameKey(header)),
    ),
  );
}

const orBlank = (value: Exact | undefined) => (value === undefined ? '' : toCell(value));

function moveRow(move: MoveLine): RowToWrite {
  const { entry, when, reason, material, quantity, lot, value, batch, by, note } =
    tables.moves.columns;
  return {
    [entry.header]: move.entry,
    [when.header]: move.when,
    [reason.header]: move.reason,
    [material.header]: move.item.name,
    [quantity.header]: toCell(move.quantity),
    [lot.header]: move.lot,
    [value.header]: orBlank(move.value),
    [batch.header]: move.batch,
    [by.header]: move.by,
    [note.header]: move.note,
  };
}

function lotRow(line: NewLot): RowToWrite {
  const { lot, material, received, quantity, paid, freight, bestBefore, supplier } =
    tables.lots.columns;
  return {
    [lot.header]: line.lot,
    [material.header]: line.material.name,
    [received.header]: line.received,
    [quantity.header]: toCell(line.quantity),
    [paid.header]: toCell(line.paid),
    [freight.header]: toCell(line.freight),
    [bestBefore.header]: line.bestBefore ?? '',
    [supplier.header]: line.supplier,
  };
}

function saleRow(line: NewSale): RowToWrite {
  const { sale, soldOn, design, bars, priceEach, fair, fees, place, tender, takenBy } =
    tables.sales.columns;
  return {
    [sale.header]: line.sale,
    [soldOn.header]: line.soldOn,
    [design.header]: line.design,
    [bars.header]: line.bars,
    [priceEach.header]: toCell(line.priceEach),
    [fair.header]: line.fair,
    [fees.header]: toCell(line.fees),
    [place.header]: line.place,
    [tender.header]: line.tender,
    [takenBy.header]: line.takenBy,
  };
}

function batchRow(line: NewBatch): RowToWrite {
  const columns = tables.batches.columns;
  return {
    [columns.batch.header]: line.batch,
    [columns.poured.header]: line.poured,
    [columns.design.header]: line.design,
    [columns.bars.header]: toCell(line.bars),
    [columns.good.header]: line.good,
    [columns.seconds.header]: line.seconds,
    [columns.lost.header]: line.lost ?? '',
    [columns.minutes.header]: orBlank(line.minutes),
    [columns.materialCost.header]: toCell(line.materialCost),
    [columns.costPerBar.header]: orBlank(line.costPerBar),
    [columns.readyOn.header]: line.readyOn ?? '',
    [columns.state.header]: line.state,
    [columns.by.header]: line.by,
    [columns.note.header]: line.note,
  };
}
