import type { Lot, Move } from '../book/book.ts';
import { nameKeysIn } from '../book/ledger.ts';
import type { Day } from '../kernel/day.ts';
import { compareLots, compareNames, nameKey } from '../kernel/names.ts';
import { ofMillionths, wholeMillionths } from '../kernel/tally.ts';
import { type ItemHistory, oncePerContent } from './item-history.ts';
import { itemSums } from './item-sums.ts';
import { ownPrice } from './lot-cost.ts';
import { layerOfLot, PricedLayer, pickOrder, type StockLayer } from './layer.ts';

/** What the whole history of an item leaves on its shelf. */
export interface LayersLeft {
  /** Layers with stock in them, in picking order. */
  readonly filled: readonly StockLayer[];
  /** The one that came last; it may be used up. */
  readonly newest: StockLayer | undefined;
}

/**
 * What an orderly history leaves, without following it move by move: where all that came in has a
 * name and a value of its own, and was only ever taken by that name, not before it came and not beyond
 * what there was, each layer keeps what came in less all that was taken. Undefined where a single line
 * is otherwise. Held equal to `Walk` by tests/domain/stock/layers-left.test.ts.
 */
export const layersLeft = oncePerContent((history: ItemHistory): LayersLeft | undefined => {
  const sources = itemSums(history).hasReversals ? undefined : sourcesOf(history);
  return sources?.every(isOrderly) === true ? leftIn(sources) : undefined;
});

/** Something that came in, and all that was taken by its name; quantities in millionths. */
interface Source {
  from: Lot | Move | undefined;
  quantity: number;
  taken: number;
  /** The first whole day on which something was taken. */
  takenFrom: Day;
}

const newSource = (from?: Lot, quantity = 0): Source => ({
  from,
  quantity,
  taken: 0,
  takenFrom: Infinity,
});

/**
 * Undefined where something has no name, no value or a name that came before, where moves put in what
 * has lots as well, or where a quantity is not whole in millionths.
 */
function sourcesOf({ lots, rows, ledger }: ItemHistory): Source[] | undefined {
  const { whens, quantities, lots: names } = ledger.columns;
  const sources = new Map<string, Source>();
  for (const lot of lots) {
    const quantity = wholeMillionths(lot.quantity);
    if (quantity === undefined) return undefined;
    sources.set(nameKey(lot.lot), newSource(lot, quantity));
  }
  const keys = nameKeysIn(names.values);
  let place = -1;
  let source = newSource();
  for (const row of rows) {
    // Many moves in a row take from the same lot.
    if (names.places[row] !== place) {
      place = names.places[row] as number;
      const key = keys[place] as string;
      if (key === '') return undefined;
      source = sources.get(key) ?? newSource();
      sources.set(key, source);
    }
    const quantity = wholeMillionths(quantities[row] as number);
    if (quantity === undefined) return undefined;
    if (quantity > 0) {
      const from = ledger.move(row);
      // Neither a count nor any move of what has lots is ever the newest that came in.
      const isNews =
        lots.length === 0 && from.item.kind !== 'material' && from.reason !== 'counted';
      if (!isNews || source.from !== undefined || from.value === undefined) return undefined;
      source.from = from;
      source.quantity = quantity;
    } else {
      source.taken -= quantity;
      source.takenFrom = Math.min(source.takenFrom, Math.floor(whens[row] as Day));
    }
  }
  return [...sources.values()];
}

const isOrderly = ({ from, quantity, taken, takenFrom }: Source): boolean =>
  from !== undefined && taken <= quantity && Math.floor(cameOn(from)) <= takenFrom;

const cameOn = (from: Lot | Move): Day => ('received' in from ? from.received : from.when);
const entryOf = (from: Lot | Move): string => ('received' in from ? from.lot : from.entry);

function leftIn(sources: readonly Source[]): LayersLeft {
  const filled: StockLayer[] = [];
  let newest: Lot | Move | undefined;
  for (const { from, quantity, taken } of sources) {
    if (from === undefined) continue;
    if (newest === undefined || isLater(from, newest)) newest = from;
    if (taken === quantity) continue;
    const layer = layerOf(from);
    layer.quantity = ofMillionths(quantity - taken);
    filled.push(layer);
  }
  return { filled: filled.sort(pickOrder), newest: newest && layerOf(newest) };
}

const isLater = (a: Lot | Move, b: Lot | Move): boolean =>
  (cameOn(a) - cameOn(b) || byName(entryOf(a), entryOf(b), 'received' in a)) > 0;
const byName = (a: string, b: string, isLot: boolean): number =>
  isLot ? compareLots(a, b) : compareNames(a, b);

function layerOf(from: Lot | Move): PricedLayer {
  if ('received' in from) return layerOfLot(from);
  const { lot, when: came, entry } = from;
  return new PricedLayer({ lot, came, bestBefore: undefined, entry }, () => ownPrice(from));
}
