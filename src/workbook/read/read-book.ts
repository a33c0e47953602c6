import type { Book } from '../../domain/book/book.ts';
import { assert } from '../../domain/kernel/assert.ts';
import { answer, type Result, wrong } from '../../domain/kernel/result.ts';
import type { TableKind } from '../schema.ts';
import { tables } from '../schema.ts';
import { readColours } from './colours.ts';
import type { Reading } from './context.ts';
import { readDesigns } from './designs.ts';
import { Findings } from './findings.ts';
import { checkHalfRows } from './half-rows.ts';
import { handleOf, printOf } from './handle.ts';
import { readLots } from './lots.ts';
import { checkMadeNames } from './made-names.ts';
import { readMaterials, readMolds } from './materials.ts';
import { type MoveCells, readMoveCells } from './move-cells.ts';
import { explainMoves, ledgerOf } from './moves.ts';
import { type RecognisedTable, recogniseTable, type TableRange } from './recognise.ts';
import { type HalfRow, readRows } from './rows.ts';
import { readBatches, readFairs, readPlan, readSales } from './seasons.ts';
import { readSettings } from './settings.ts';

/** Tables told apart by their headers and named by content, before names in them are looked up. */
export interface RecognisedTables {
  readonly handle: string;
  readonly byKind: ReadonlyMap<TableKind, RecognisedTable>;
  readonly moves: MoveCells;
}

/** Tells which tables the ranges are. Fails with a sentence for each range that is none, or that stands twice. */
export function recogniseTables(ranges: readonly TableRange[]): Result<RecognisedTables> {
  const findings = new Findings();
  const byKind = new Map<TableKind, RecognisedTable>();
  ranges.forEach((range, index) => {
    const table = recogniseTable(range, index + 1, findings);
    if (table === undefined) return;
    if (byKind.has(table.kind)) {
      findings.add(
        tables[table.kind].name,
        undefined,
        undefined,
        'is given twice. Give each table once',
      );
    }
    byKind.set(table.kind, table);
  });
  if (ranges.length === 0)
    return wrong('Give BOOK your tables, each with its headers: =POUR.BOOK(Materials[#All], …).');
  if (!findings.none) return wrong(findings.message());
  const moves = readMoveCells(byKind.get('moves'));
  const others = [...byKind.values()].filter(({ kind }) => kind !== 'moves');
  return answer({ handle: handleOf([moves.print, ...others.map(printOf)]), byKind, moves });
}

/**
 * Reads recognised tables into a book. Any bad row refuses the whole book, with every finding (up to
 * 20) in one message: table, row, column, value and what to do. Only blank rows are skipped.
 */
export function readBook({ handle, byKind, moves }: RecognisedTables): Result<Book> {
  const findings = new Findings();
  const reading: Reading = {
    materials: new Map(),
    molds: new Map(),
    colours: new Map(),
    designs: new Map(),
    findings,
    assumptions: new Set(),
  };
  const halfRows: HalfRow[] = [];
  const rows = <K extends TableKind>(kind: K) =>
    readRows(kind, byKind.get(kind), findings, halfRows);
  const settings = readSettings(rows('settings'), reading);
  const materialRows = rows('materials');
  const designRows = rows('designs');
  readMaterials(materialRows, reading);
  readMolds(rows('molds'), reading);
  readColours(rows('colours'), reading);
  readDesigns(designRows, rows('layers'), reading);
  checkMadeNames(materialRows, designRows, reading);
  const lots = readLots(rows('lots'), reading);
  const ledger = ledgerOf(moves, lots, reading);
  if (ledger === undefined) explainMoves(rows('moves'), lots, reading);
  const batches = readBatches(rows('batches'), reading);
  const fairs = readFairs(rows('fairs'));
  const plan = readPlan(rows('plan'), fairs, reading);
  const sales = readSales(rows('sales'), fairs, reading);
  checkHalfRows(halfRows, { reading, fairs });
  if (!findings.none) return wrong(findings.message());
  assert(ledger !== undefined, 'Moves was refused without a reason.');
  const { materials, molds, colours, designs } = reading;
  const assumptions = [...reading.assumptions].sort();
  return answer({
    handle,
    settings,
    materials,
    molds,
    colours,
    designs,
    lots,
    ledger,
    batches,
    plan,
    fairs,
    sales,
    assumptions,
  });
}
