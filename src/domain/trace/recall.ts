import type { Book, Item, Lot, Material } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, exact, sum, zero } from '../kernel/exact.ts';
import { compareNames, nameKey, quoted } from '../kernel/names.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';
import { materialsPerG } from '../recipe/materials-per-g.ts';
import { historyOf, indexOf } from '../stock/ledger-index.ts';
import { live } from '../stock/reversals.ts';
import { stockAt } from '../stock/valuation.ts';
import { flowsOf, type Leaving, leavingsOf } from './flows.ts';
import { batchKeyOf, reachOfLot } from './reach.ts';
import { findTraceable } from './trace.ts';

/** Everything a maker must find again when a supplier calls a lot back. */
export interface Recall {
  readonly lot: Lot;
  /** Left of the lot itself, in the material's unit. */
  readonly lotOnHand: Exact;
  /** Wasted, counted off, or used without a batch. */
  readonly lotGone: Exact;
  readonly batches: readonly RecalledBatch[];
  /** Leftover soap and spare pieces of those batches still on the shelf that by recipe hold the material. */
  readonly soapOnHand: readonly RecalledSoap[];
  /** Uses of the same material, or of soap, of which nobody knows where it came from. */
  readonly doubtful: readonly Leaving[];
}

/**
 * How the lot got into a batch: taken by it; through leftovers or spares of a soap that by its recipe
 * holds the material; or only if melts were mixed, since the ledger counts a batch as one whole.
 */
export type Certainty = 'direct' | 'by recipe' | 'possible';

export interface RecalledBatch {
  readonly batch: string;
  readonly poured: Day;
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
  readonly onHand: Exact;
}

/** Follows a lot to every batch and on to its bars: on the shelf, sold or gone, at the end of a day. */
export function recallOf(book: Book, lotName: string, asOf: Day): Result<Recall> {
  const found = findTraceable(book, lotName);
  if (!found.ok) return found;
  const { lot } = found.value;
  if (lot === undefined) {
    return wrong(
      `${quoted(lotName)} is a batch. A recall starts from a lot in Lots: TRACE of the batch names its lots.`,
    );
  }
  const until = Math.floor(asOf) + 1;
  const isBy = ({ move }: Leaving): boolean => move.when < until;
  const reach = reachOfLot(book, nameKey(lot.lot)).filter(isBy);
  const keys = new Set(reach.map(batchKeyOf).filter((key) => key !== ''));
  const direct = new Set(reach.filter((leaving) => leaving.lot !== undefined).map(batchKeyOf));
  const byRecipe = new Set(
    reachOfLot(book, nameKey(lot.lot), (item) => mayHold(item, lot.material)).map(batchKeyOf),
  );
  const certaintyOf = (key: string): Certainty =>
    direct.has(key) ? 'direct' : byRecipe.has(key) ? 'by recipe' : 'possible';
  const batches = [...keys].map((key) => recalledBatch(book, key, certaintyOf(key), reach, asOf));
  return answer({
    lot,
    lotOnHand: lotOnHand(book, lot, asOf),
    lotGone: sum(
      leavingsOf(book, historyOf(book, itemOfMaterial(lot.material)))
        .filter((leaving) => leaving.lot === nameKey(lot.lot) && isBy(leaving))
        .filter((leaving) => leaving.move.reason !== 'used' || batchKeyOf(leaving) === '')
        .map(({ quantity }) => quantity),
    ),
    batches: batches.sort((a, b) => a.poured - b.poured || compareNames(a.batch, b.batch)),
    soapOnHand: soapOnHand(book, keys, asOf).filter(({ item }) => mayHold(item, lot.material)),
    doubtful: flowsOf(book).fromNowhere.filter(
      (leaving) =>
        isBy(leaving) &&
        (leaving.item.kind !== 'material' || leaving.item.material === lot.material),
    ),
  });
}

/** By today's recipes: soap holds what it is made of through all its blends, bars may hold anything. */
function mayHold(item: Item, material: Material): boolean {
  return 'soap' in item ? materialsPerG(item.soap).has(material) : item.kind === 'bars';
}

function lotOnHand(book: Book, lot: Lot, asOf: Day): Exact {
  return layersOf(book, itemOfMaterial(lot.material), nameKey(lot.lot), asOf);
}

/** What lies on an item's shelf under one lot or batch. */
function layersOf(book: Book, item: Item, key: string, asOf: Day): Exact {
  const layers = stockAt(book, item, asOf).filled.filter((layer) => nameKey(layer.lot) === key);
  return sum(layers.map(({ quantity }) => quantity));
}

function recalledBatch(
  book: Book,
  key: string,
  certainty: Certainty,
  reach: readonly Leaving[],
  asOf: Day,
): RecalledBatch {
  const batch = book.batches.get(key);
  const moves = reach.filter((leaving) => batchKeyOf(leaving) === key).map(({ move }) => move);
  const bars = barsOf(book, key, asOf);
  return {
    batch: batch?.batch ?? moves[0]?.batch ?? key,
    poured: batch?.poured ?? Math.min(...moves.map(({ when }) => when)),
    design: batch?.design.name ?? '',
    certainty,
    ...bars,
  };
}

/** Bars of one batch, whatever design its `made` moves name. */
function barsOf(
  book: Book,
  key: string,
  asOf: Day,
): Pick<RecalledBatch, 'barsMade' | 'barsOnHand' | 'barsSold' | 'barsGone' | 'sales'> {
  const until = Math.floor(asOf) + 1;
  let barsOnHand = zero;
  const made: Exact[] = [];
  const left: Leaving[] = [];
  for (const history of indexOf(book).values()) {
    const item = history.moves[0]?.item;
    if (item?.kind !== 'bars') continue;
    const mine = live(history.moves).filter(
      (move) => move.reason === 'made' && nameKey(move.batch) === key && move.when < until,
    );
    const ours = leavingsOf(book, history).filter(
      ({ makers, move }) => makers.includes(key) && move.when < until,
    );
    if (mine.length === 0 && ours.length === 0) continue;
    made.push(...mine.map(({ quantity }) => exact(quantity)));
    left.push(...ours);
    barsOnHand = barsOnHand.plus(layersOf(book, item, key, asOf));
  }
  const sold = left.filter(({ move }) => move.reason === 'sold');
  const total = (leavings: readonly Leaving[]): Exact =>
    sum(leavings.map(({ quantity }) => quantity));
  return {
    barsMade: sum(made),
    barsOnHand,
    barsSold: total(sold),
    barsGone: total(left).minus(total(sold)),
    sales: sold.map(({ move, quantity }) => ({
      when: move.when,
      bars: quantity,
      note: move.note,
    })),
  };
}

function soapOnHand(book: Book, keys: ReadonlySet<string>, asOf: Day): RecalledSoap[] {
  const soap: RecalledSoap[] = [];
  for (const { moves } of indexOf(book).values()) {
    const item = moves[0]?.item;
    if (item === undefined || item.kind === 'material' || item.kind === 'bars') continue;
    for (const key of keys) {
      const onHand = layersOf(book, item, key, asOf);
      const batch = book.batches.get(key)?.batch ?? key;
      if (onHand.gt(0)) soap.push({ item, batch, onHand });
    }
  }
  return soap.sort(
    (a, b) => compareNames(a.item.name, b.item.name) || compareNames(a.batch, b.batch),
  );
}
