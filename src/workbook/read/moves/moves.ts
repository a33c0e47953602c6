import type { Item, Lot, Material, Move } from '../../../domain/book/book.ts';
import { type Catalogue, findItem } from '../../../domain/book/find.ts';
import { Ledger, nameKeysIn, valueIn } from '../../../domain/book/ledger.ts';
import { givenAs, reasonsOfMade, saysGivenAs } from '../../../domain/book/words.ts';
import { isoDate } from '../../../domain/kernel/day.ts';
import { didYouMean, nameKey, quoted } from '../../../domain/kernel/names.ts';
import { oncePer } from '../../../domain/kernel/once-per.ts';
import type { Result } from '../../../domain/kernel/result.ts';
import { isSameItem, pairUp } from '../../../domain/stock/reversals.ts';
import { isExcused, noted, type Reading } from '../context.ts';
import { type MoveCells, signOf } from './move-cells.ts';
import type { Rows } from '../rows.ts';
import { hashOfName } from '../unique.ts';

/** The ledger, where each line's cells, item, lot and what it takes back make sense; else undefined. */
export function ledgerOf(
  cells: MoveCells,
  lots: readonly Lot[],
  catalogue: Catalogue,
): Ledger | undefined {
  const found = cells.materials.values.map((name) => findItem(catalogue, name));
  const items = found.flatMap((item) => (item.ok ? [item.value] : []));
  if (!cells.sound || items.length < found.length) return undefined;
  const columns = { ...cells, items: { values: items, places: cells.materials.places } };
  if (!haveRightLots(columns, lots) || !haveRightReasons(columns)) return undefined;
  const ledger = new Ledger(columns, cells.prints);
  return looseReversals(ledger, cells.entryHashes).length === 0 ? ledger : undefined;
}

/** `checkLot` for all rows at once: whether each material's lot is blank or one of its own. */
function haveRightLots(
  { items, lots }: Pick<Ledger['columns'], 'items' | 'lots'>,
  known: readonly Lot[],
): boolean {
  const byKey = ownersOf(known);
  const materials = items.values.map((item) => (item.kind === 'material' ? item.material : ANY));
  const owners = nameKeysIn(lots.values).map((key) => (key === '' ? ANY : byKey.get(key)));
  for (let row = 0; row < items.places.length; row += 1) {
    const material = materials[items.places[row] as number];
    const owner = owners[lots.places[row] as number];
    if (material !== owner && material !== ANY && owner !== ANY) return false;
  }
  return true;
}

/** `checkReason` for all rows at once. */
function haveRightReasons({ items, reasons, notes }: Ledger['columns']): boolean {
  const isMade = reasons.values.map((reason) => reasonsOfMade.includes(reason));
  const isGiven = reasons.values.map((reason) => reason === 'given');
  const isSent = reasons.values.map((reason) => reason === 'sent');
  if (![isMade, isGiven, isSent].some((some) => some.includes(true))) return true;
  const isMaterial = items.values.map(({ kind }) => kind === 'material');
  const canBeSent = items.values.map(({ kind }) => kind === 'bars' || kind === 'placed');
  const saysHow = isGiven.includes(true) ? notes.values.map(saysGivenAs) : [];
  for (let row = 0; row < items.places.length; row += 1) {
    const reason = reasons.places[row] as number;
    if (isMade[reason] === true && isMaterial[items.places[row] as number] === true) return false;
    if (isSent[reason] === true && canBeSent[items.places[row] as number] !== true) return false;
    if (isGiven[reason] === true && saysHow[notes.places[row] as number] !== true) return false;
  }
  return true;
}

/** Reversals that fit no move. Of a ledger of years only those and the moves that they name are looked at. */
function looseReversals(ledger: Ledger, hashes: Int32Array): readonly Move[] {
  const { entries, reasons, notes } = ledger.columns;
  const takesBack = reasons.values.map((reason) => reason === 'reversed');
  if (!takesBack.includes(true)) return [];
  const made = new Map<number, Move>();
  const wanted = new Set<number>();
  for (let row = 0; row < entries.length; row += 1) {
    if (takesBack[reasons.places[row] as number] !== true) continue;
    made.set(row, ledger.move(row));
    wanted.add(hashOfName(valueIn(notes, row)));
  }
  const reversals = [...made.values()];
  if (reversals.length === 0) return [];
  for (let row = 0; row < entries.length; row += 1)
    if (wanted.has(hashes[row] as number) && !made.has(row)) made.set(row, ledger.move(row));
  return pairUp(reversals, [...made.values()]).loose;
}

/** The material of each lot by the lot's `nameKey`. */
const ownersOf = oncePer(
  (lots: readonly Lot[]): ReadonlyMap<string, Material> =>
    new Map(lots.map((lot) => [nameKey(lot.lot), lot.material])),
);

/** Stands for every material. */
const ANY = Symbol('any material');

/** Notes what is wrong with the lines of Moves: item, sign and lot. */
export function explainMoves(rows: Rows<'moves'>, lots: readonly Lot[], reading: Reading): void {
  const lotsByKey = new Map(lots.map((lot) => [nameKey(lot.lot), lot]));
  // A ledger of years names few things many times: each spelling is looked up once.
  const items = new Map<string, Result<Item>>();
  const moves: (Move & { readonly row: number })[] = [];
  for (const row of rows) {
    let found = items.get(row.material);
    if (found === undefined) {
      found = findItem(reading, row.material);
      items.set(row.material, found);
    }
    if (found.ok) {
      checkSign(row, reading);
      checkReason(row, found.value, reading);
      checkLot(row, found.value, lotsByKey, reading);
      moves.push(moveOf(row, found.value));
    } else if (!isExcused(row.material, reading)) {
      noted(reading, { table: 'LedgerLines', row: row.row, column: 'Material' }, found);
    }
  }
  explainReversals(moves, reading);
}

/** Says of reversals that fit no move what to type so that they do. */
function explainReversals(
  moves: readonly (Move & { readonly row: number })[],
  { findings }: Reading,
): void {
  const reversals = moves.filter(({ reason }) => reason === 'reversed');
  const { loose } = pairUp(reversals, moves);
  const byEntry = new Map(moves.map((move) => [nameKey(move.entry), move]));
  for (const reversal of reversals.filter((each) => loose.includes(each))) {
    if (findings.excused('LedgerLines', reversal.note)) continue;
    const [column, says] = misfit(reversal, byEntry.get(nameKey(reversal.note)), moves);
    findings.add('LedgerLines', reversal.row, column, says);
  }
}

/** The column in which a reversal does not fit the move that it names, and what to type. */
function misfit(
  reversal: Move,
  target: Move | undefined,
  moves: readonly Move[],
): [column: string, says: string] {
  const { note, quantity, item, entry } = reversal;
  if (note === '') return ['Note', 'is blank. Type the Entry of the line that this one takes back'];
  if (target === undefined) {
    const like = moves.filter((move) => isSameItem(move, reversal)).map((move) => move.entry);
    return [
      'Note',
      `is ${quoted(note)}, which is no Entry.${didYouMean(note, like)} Type the Entry of the line that this one takes back`,
    ];
  }
  const named = `entry ${quoted(target.entry)}, which it takes back,`;
  if (!isSameItem(target, reversal))
    return [
      'Material',
      `is ${quoted(item.name)}, but ${named} moved ${quoted(target.item.name)}. Type that, or another Entry in Note`,
    ];
  if (target.quantity !== -quantity)
    return [
      'Quantity',
      `is ${quantity}, but ${named} moved ${target.quantity}. Type ${-target.quantity}`,
    ];
  if (Math.floor(target.when) > Math.floor(reversal.when))
    return [
      'When',
      `is before that of ${named} ${isoDate(target.when)}. Type that day or a later one`,
    ];
  return [
    'Note',
    `is ${quoted(note)}, which does not stand, since another line takes it back. Clear this row, or take it back by a line with ${quoted(entry)} in its Note`,
  ];
}

function checkReason(
  { row, reason, note = '' }: Rows<'moves'>[number],
  item: Item,
  { findings }: Reading,
): void {
  if (item.kind === 'material' && reasonsOfMade.includes(reason)) {
    const instead = reason === 'sold' ? '"used", "wasted" or "given"' : '"counted"';
    findings.add(
      'LedgerLines',
      row,
      'Reason',
      `is "${reason}", but ${quoted(item.name)} is a material, which is bought and used. Use ${instead}`,
    );
  }
  if (reason === 'sent' && item.kind !== 'bars' && item.kind !== 'placed') {
    findings.add(
      'LedgerLines',
      row,
      'Reason',
      `is "sent", but only bars are sent between the shelf and a place, not ${quoted(item.name)}. Use "counted", or name a design or "design @ place"`,
    );
  }
  if (reason === 'given' && !saysGivenAs(note)) {
    const now = note === '' ? 'is blank' : `is ${quoted(note)}`;
    findings.add('LedgerLines', row, 'Note', `${now}. Begin it with ${givenAs.join(', ')}`);
  }
}

const moveOf = (row: Rows<'moves'>[number], item: Item): Move & { readonly row: number } => ({
  ...row,
  item,
  lot: row.lot ?? '',
  value: row.value,
  batch: row.batch ?? '',
  by: row.by ?? '',
  note: row.note ?? '',
});

function checkSign(row: Rows<'moves'>[number], reading: Reading): void {
  const sign = signOf(row.reason);
  if (sign === undefined || row.quantity === 0 || Math.sign(row.quantity) === sign) return;
  const way =
    sign < 0 ? 'takes stock away: type it with a minus' : 'adds to stock: type it without a minus';
  reading.findings.add(
    'LedgerLines',
    row.row,
    'Quantity',
    `is ${row.quantity}, but "${row.reason}" ${way}`,
  );
}

/** A material's lot must be one of its own; soap and bars name the batch they come from instead. */
function checkLot(
  row: Rows<'moves'>[number],
  item: Item,
  lots: ReadonlyMap<string, Lot>,
  reading: Reading,
): void {
  if (row.lot === undefined || item.kind !== 'material') return;
  const lot = lots.get(nameKey(row.lot));
  if (lot === undefined) {
    if (reading.findings.excused('Lots', row.lot)) return;
    reading.findings.add(
      'LedgerLines',
      row.row,
      'Lot',
      `is ${quoted(row.lot)}, which is not a lot in Lots. Leave it blank if you don't know the lot`,
    );
  } else if (lot.material !== item.material) {
    reading.findings.add(
      'LedgerLines',
      row.row,
      'Lot',
      `is ${quoted(row.lot)}, which is a lot of ${lot.material.name}, not of ${item.name}. Name a lot of ${item.name}, or leave it blank if you don't know the lot`,
    );
  }
}
