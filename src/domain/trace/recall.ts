import type { Book, Item, Lot, Material, Move } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import { addUnder } from '../kernel/add-under.ts';
import type { Day } from '../kernel/day.ts';
import { addTo, type Exact, exact, sum, zero } from '../kernel/exact.ts';
import { compareNames, nameKey } from '../kernel/names.ts';
import { oncePer } from '../kernel/once-per.ts';
import { andThen, answer, type Result } from '../kernel/result.ts';
import { materialsIn } from '../recipe/materials-in.ts';
import { movesOfBatch } from '../stock/batch-moves.ts';
import { historyOf, indexOf } from '../stock/ledger-index.ts';
import { live } from '../stock/reversals.ts';
import { stockAt } from '../stock/valuation.ts';
import { barsByBatch } from './bars-by-batch.ts';
import { flowsOf, type Leaving, leavingsOf } from './flows.ts';
import { batchKeyOf, reachOfBatch, reachOfLot } from './reach.ts';
import { findTraceable } from './trace.ts';

/** Everything a maker must find again when a supplier calls a lot back, or a batch has a fault. */
export interface Recall {
  /** Undefined where only a batch is called back. */
  readonly lot: RecalledLot | undefined;
  readonly batches: readonly RecalledBatch[];
  /** Leftover soap and spare pieces of those batches still on the shelf that may hold what is called back. */
  readonly soapOnHand: readonly RecalledSoap[];
  /** Uses of the same material, or of soap, of which nobody knows where it came from. */
  readonly doubtful: readonly Leaving[];
}

export interface RecalledLot {
  readonly lot: Lot;
  /** Left of the lot itself, in the material's unit. */
  readonly onHand: Exact;
  /** Wasted, counted off, or used without a batch. */
  readonly gone: Exact;
}

/**
 * How the lot got into a batch: taken by it; through leftovers or spares of a soap that by its recipe
 * holds the material; or only if melts were mixed, since the ledger counts a batch as one whole. Where a
 * batch is called back, it and what took of it are direct, and what took of those is possible.
 */
export type Certainty = 'direct' | 'by recipe' | 'possible';

export interface RecalledBatch {
  readonly batch: string;
  readonly poured: Day;
  /** "" where the batch has no line in Batches. */
  readonly design: string;
  readonly certainty: Certainty;
  /** Good bars put in stock. */
  readonly barsMade: Exact;
  readonly barsOnHand: Exact;
  readonly barsSold: Exact;
  /** Wasted, counted off or melted again. */
  readonly barsGone: Exact;
  /** Who bought, as far as the ledger says: the day and note of each sale of these bars. */
  readonly sales: readonly { readonly when: Day; readonly bars: Exact; readonly note: string }[];
}

export interface RecalledSoap {
  readonly item: Item;
  readonly batch: string;
  readonly certainty: Certainty;
  readonly onHand: Exact;
}

/**
 * Follows a lot to every batch and on to its bars: on the shelf, sold or gone, at the end of a day. A batch
 * is followed in the same way through what it left. A name that is both is followed both ways, since a
 * recall must not miss either.
 */
export function recallOf(book: Book, name: string, asOf: Day): Result<Recall> {
  return andThen(findTraceable(book, name), ({ lot, batch }) => {
    const until = Math.floor(asOf) + 1;
    const isBy = ({ move }: Leaving): boolean => move.when < until;
    const ofLot = (lot === undefined ? [] : reachOfLot(book, nameKey(lot.lot))).filter(isBy);
    const own = nameKey(batch ?? '');
    const ofBatch = (batch === undefined ? [] : reachOfBatch(book, own)).filter(isBy);
    const direct = new Set([
      own,
      ...ofLot.filter((leaving) => leaving.lot !== undefined).map(batchKeyOf),
      ...ofBatch.filter(({ makers }) => makers.includes(own)).map(batchKeyOf),
    ]);
    const byRecipe = new Set(
      lot === undefined
        ? []
        : reachOfLot(book, nameKey(lot.lot), (item) => mayHold(item, lot.material)).map(batchKeyOf),
    );
    const reach = [...new Set([...ofLot, ...ofBatch])];
    const fromBatch = new Set([own, ...ofBatch.map(batchKeyOf)]);
    const keys = new Set([own, ...reach.map(batchKeyOf)]);
    keys.delete('');
    return answer({
      lot: lot && recalledLot(book, lot, asOf),
      batches: recalledBatches(book, keys, reach, asOf, (key) =>
        direct.has(key) ? 'direct' : byRecipe.has(key) ? 'by recipe' : 'possible',
      ),
      soapOnHand: soapOnHand(book, keys, asOf, (key, item) => {
        if (key === own) return 'direct';
        if (lot !== undefined && mayHold(item, lot.material)) return 'by recipe';
        return fromBatch.has(key) ? 'possible' : undefined;
      }),
      doubtful: flowsOf(book).fromNowhere.filter(
        (leaving) =>
          isBy(leaving) &&
          (leaving.item.kind !== 'material' || leaving.item.material === lot?.material),
      ),
    });
  });
}

function recalledLot(book: Book, lot: Lot, asOf: Day): RecalledLot {
  const item = itemOfMaterial(lot.material);
  const key = nameKey(lot.lot);
  const until = Math.floor(asOf) + 1;
  return {
    lot,
    onHand: layersOf(book, item, new Set([key]), asOf).get(key) ?? zero,
    gone: sum(
      leavingsOf(book, historyOf(book, item))
        .filter((leaving) => leaving.lot === key && leaving.move.when < until)
        .filter((leaving) => leaving.move.reason !== 'used' || batchKeyOf(leaving) === '')
        .map(({ quantity }) => quantity),
    ),
  };
}

/** By today's recipes: soap holds what it is made of through all its blends, bars may hold anything. */
function mayHold(item: Item, material: Material): boolean {
  return 'soap' in item ? materialsIn(item.soap).has(material) : item.kind === 'bars';
}

/** What lies on an item's shelf under each of some lots or batches. */
function layersOf(
  book: Book,
  item: Item,
  keys: ReadonlySet<string>,
  asOf: Day,
): Map<string, Exact> {
  const found = new Map<string, Exact>();
  for (const { lot, quantity } of stockAt(book, item, asOf).filled) {
    const key = nameKey(lot);
    if (keys.has(key)) addTo(found, key, quantity);
  }
  return found;
}

/** Those batches, the oldest first. */
function recalledBatches(
  book: Book,
  keys: ReadonlySet<string>,
  reach: readonly Leaving[],
  asOf: Day,
  certaintyOf: (key: string) => Certainty,
): RecalledBatch[] {
  const movesOf = new Map<string, Move[]>();
  for (const leaving of reach) addUnder(movesOf, batchKeyOf(leaving), leaving.move);
  const onHand = barsOnHand(book, asOf);
  return [...keys]
    .map((key): RecalledBatch => {
      const batch = book.batches.get(key);
      const moves = movesOf.get(key) ?? movesOfBatch(book, key).all;
      return {
        batch: batch?.batch ?? moves[0]?.batch ?? key,
        poured: batch?.poured ?? Math.min(...moves.map(({ when }) => when)),
        design: batch?.design?.name ?? '',
        certainty: certaintyOf(key),
        ...barsOf(book, key, asOf),
        barsOnHand: onHand.get(key) ?? zero,
      };
    })
    .sort((a, b) => a.poured - b.poured || compareNames(a.batch, b.batch));
}

/** Bars of a batch that came and went, whatever design its `made` moves name. */
interface BarFlows {
  readonly made: Move[];
  readonly left: Leaving[];
}

/** The same of all batches, by `nameKey`. */
const barFlowsOf = oncePer((book: Book): ReadonlyMap<string, BarFlows> => {
  const flows = new Map<string, BarFlows>();
  const of = (key: string): BarFlows => {
    const known = flows.get(key) ?? { made: [], left: [] };
    flows.set(key, known);
    return known;
  };
  for (const history of indexOf(book).values()) {
    const item = history.moves[0]?.item;
    if (item?.kind !== 'bars') continue;
    for (const move of live(history.moves))
      if (move.reason === 'made') of(nameKey(move.batch)).made.push(move);
    for (const leaving of leavingsOf(book, history))
      for (const maker of leaving.makers) of(maker).left.push(leaving);
  }
  return flows;
});

/** Bars on the shelf by `nameKey` of their batch, whatever their design. */
function barsOnHand(book: Book, asOf: Day): ReadonlyMap<string, Exact> {
  const all = new Map<string, Exact>();
  for (const design of book.designs.values())
    for (const [key, bars] of barsByBatch(book, design, asOf)) addTo(all, key, bars);
  return all;
}

function barsOf(
  book: Book,
  key: string,
  asOf: Day,
): Pick<RecalledBatch, 'barsMade' | 'barsSold' | 'barsGone' | 'sales'> {
  const until = Math.floor(asOf) + 1;
  const flows = barFlowsOf(book).get(key);
  const made = flows?.made.filter(({ when }) => when < until) ?? [];
  const left = flows?.left.filter(({ move }) => move.when < until) ?? [];
  const sold = left.filter(({ move }) => move.reason === 'sold');
  const total = (leavings: readonly Leaving[]): Exact =>
    sum(leavings.map(({ quantity }) => quantity));
  return {
    barsMade: sum(made.map(({ quantity }) => exact(quantity))),
    barsSold: total(sold),
    barsGone: total(left).minus(total(sold)),
    sales: sold.map(({ move, quantity }) => ({
      when: move.when,
      bars: quantity,
      note: move.note,
    })),
  };
}

/** Soap and pieces of those batches; left out where the certainty is undefined. */
function soapOnHand(
  book: Book,
  keys: ReadonlySet<string>,
  asOf: Day,
  certaintyOf: (key: string, item: Item) => Certainty | undefined,
): RecalledSoap[] {
  const soap: RecalledSoap[] = [];
  for (const { moves } of indexOf(book).values()) {
    const item = moves[0]?.item;
    if (item === undefined || item.kind === 'material' || item.kind === 'bars') continue;
    for (const [key, onHand] of layersOf(book, item, keys, asOf)) {
      const batch = book.batches.get(key)?.batch ?? key;
      const certainty = certaintyOf(key, item);
      if (certainty !== undefined && onHand.gt(0)) soap.push({ item, batch, certainty, onHand });
    }
  }
  return soap.sort(
    (a, b) => compareNames(a.item.name, b.item.name) || compareNames(a.batch, b.batch),
  );
}
