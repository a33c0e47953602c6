import type { Book } from '../../domain/book/book.ts';
import { findItem } from '../../domain/book/find.ts';
import { assert } from '../../domain/kernel/assert.ts';
import type { TableKind } from '../schema.ts';
import { tables } from '../schema.ts';
import { readColours } from './colours.ts';
import type { AmountOfItem } from './amounts-in-cells.ts';
import type { Reading } from './context.ts';
import { readDesigns } from './designs.ts';
import { Findings, type Unread } from './findings.ts';
import type { Fingerprint } from './fingerprint.ts';
import { checkHalfRows } from './half-rows.ts';
import { handleOf, printOf } from './handle.ts';
import { readLots } from './lots.ts';
import { checkMadeNames, checkPlacedNames } from './made-names.ts';
import { readMaterials, readMolds } from './materials.ts';
import { type MoveCells, readMoveCells } from './moves/move-cells.ts';
import { explainMoves, ledgerOf } from './moves/moves.ts';
import { type RecognisedTable, recogniseTable, type TableRange } from './recognise.ts';
import { type HalfRow, readRows, type Rows } from './rows.ts';
import { readBatches, readFairs, readPlan, readSales } from './seasons.ts';
import { readSettings } from './settings.ts';
import { checkBreakNames, readBuying } from './suppliers.ts';
import { readPartners, readPlaces, readSets } from './trade.ts';
import { asHandedOver } from './zero-blanks.ts';

/** Tables told apart by their headers and named by content, before names in them are looked up. */
export interface RecognisedTables {
  readonly handle: string;
  readonly tableHandles: ReadonlyMap<TableKind, string>;
  readonly byKind: ReadonlyMap<TableKind, RecognisedTable>;
  readonly moves: MoveCells;
}

/** What was read, or all that there is to mend first. */
export type BookRead<T> = { readonly ok: true; readonly value: T } | Unread;

const read = <T>(value: T): BookRead<T> => ({ ok: true, value });

/**
 * Tells which tables the ranges are. Fails with a finding for each range that is none, or that stands
 * twice. Moves that stand as they did in a book read `before` are not read a second time.
 */
export function recogniseTables(
  ranges: readonly TableRange[],
  before?: Book,
): BookRead<RecognisedTables> {
  const findings = new Findings();
  const found = ranges.flatMap((range, index) => recogniseTable(range, index + 1, findings) ?? []);
  const byKind = new Map<TableKind, RecognisedTable>();
  for (const table of asHandedOver(found)) {
    if (byKind.has(table.kind)) {
      findings.add(
        tables[table.kind].name,
        undefined,
        undefined,
        'is given twice. Give each table once',
      );
    }
    byKind.set(table.kind, table);
  }
  if (!findings.none) return findings.unread();
  const prints = new Map<TableKind, Fingerprint>();
  for (const [kind, table] of byKind) if (kind !== 'moves') prints.set(kind, printOf(table));
  const tableHandles = new Map(Array.from(prints, ([kind, print]) => [kind, handleOf([print])]));
  // Names that no line uses any more stay among those taken over: they are known as long as the catalogue is.
  const kept = hasCatalogueOf(before, tableHandles) ? before?.ledger.prints : undefined;
  const moves = readMoveCells(byKind.get('moves'), kept);
  if (byKind.has('moves')) {
    prints.set('moves', moves.print);
    tableHandles.set('moves', handleOf([moves.print]));
  }
  return read({ handle: handleOf([...prints.values()]), tableHandles, byKind, moves });
}

/** What the ledger's names and values rest on. */
const catalogueKinds = [
  'settings',
  'materials',
  'molds',
  'colours',
  'designs',
  'layers',
  'lots',
  'suppliers',
  'priceBreaks',
  'places',
  'partners',
] as const;

const hasCatalogueOf = (
  before: Book | undefined,
  tableHandles: RecognisedTables['tableHandles'],
): boolean =>
  catalogueKinds.every((kind) => before?.tableHandles.get(kind) === tableHandles.get(kind));

/**
 * Reads recognised tables into a book. Any bad row refuses the whole book, with every finding: table, row,
 * column, value and what to do. Only blank rows are skipped.
 * What has not changed since a book read `before` is taken over from it.
 */
export function readBook(recognised: RecognisedTables, before?: Book): BookRead<Book> {
  const { handle, tableHandles, byKind, moves } = recognised;
  const kept = hasCatalogueOf(before, tableHandles) ? before : undefined;
  const findings = new Findings();
  const reading = readingFrom(kept, findings);
  const halfRows: HalfRow[] = [];
  const rows = <K extends TableKind>(kind: K) =>
    readRows(kind, byKind.get(kind), findings, halfRows, amountOfItemIn(reading));
  const canBlankBeZero = byKind.get('settings')?.hasZerosForBlanks === true;
  const { settings, lots } = kept ?? readCatalogue(rows, reading, canBlankBeZero);
  const ledger = ledgerOf(moves, lots, reading);
  if (ledger === undefined) explainMoves(rows('moves'), lots, reading);
  const batches = readBatches(rows('batches'), reading);
  const fairs = readFairs(rows('fairs'));
  const plan = readPlan(rows('plan'), fairs, reading);
  const sales = readSales(rows('sales'), fairs, reading);
  const sets = readSets(rows('sets'), reading);
  checkHalfRows(halfRows, { reading, fairs });
  if (!findings.none) return findings.unread();
  assert(ledger !== undefined, 'Moves was refused without a reason.');
  const { materials, molds, colours, designs, places, partners } = kept ?? reading;
  const assumptions = [...reading.assumptions]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, assumption]) => assumption);
  return read({
    handle,
    tableHandles,
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
    places,
    sets,
    partners,
    assumptions,
  });
}

/** A reading that begins with what is taken over. */
const readingFrom = (kept: Book | undefined, findings: Findings): Reading => ({
  materials: new Map(kept?.materials),
  molds: new Map(kept?.molds),
  colours: new Map(kept?.colours),
  designs: new Map(kept?.designs),
  places: new Map(kept?.places),
  partners: new Map(kept?.partners),
  findings,
  assumptions: new Map(kept?.assumptions.map((known) => [known.sentence, known])),
});

/** In an item's own unit; of a material, by its density where that is filled in. */
const amountOfItemIn =
  (reading: Reading): AmountOfItem =>
  (name) => {
    const found = findItem(reading, name);
    if (!found.ok) return undefined;
    const { value: item } = found;
    return item.kind === 'material'
      ? { kind: 'quantity', unit: item.unit, of: item.material }
      : { kind: 'quantity', unit: item.unit };
  };

type ReadRows = <K extends TableKind>(kind: K) => Rows<K>;

function readCatalogue(
  rows: ReadRows,
  reading: Reading,
  canBlankBeZero: boolean,
): Pick<Book, 'settings' | 'lots'> {
  const settings = readSettings(rows('settings'), reading, canBlankBeZero);
  const materialRows = rows('materials');
  const designRows = rows('designs');
  const breakRows = rows('priceBreaks');
  readMaterials(materialRows, readBuying(rows('suppliers'), breakRows, reading), reading);
  checkBreakNames(breakRows, reading);
  const moldRows = rows('molds');
  readMolds(moldRows, reading);
  readColours(rows('colours'), reading);
  readDesigns(designRows, rows('layers'), reading);
  const placeRows = rows('places');
  readPlaces(placeRows, reading);
  readPartners(rows('partners'), reading);
  checkMadeNames({ materials: materialRows, designs: designRows, molds: moldRows }, reading);
  checkPlacedNames(designRows, placeRows, reading);
  return { settings, lots: readLots(rows('lots'), reading) };
}
