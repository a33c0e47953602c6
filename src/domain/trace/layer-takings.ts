import type { Book, Item, Lot, Move } from '../book/book.ts';
import { type Exact, exact, least } from '../kernel/exact.ts';
import { historyOf, liveMoves } from '../stock/ledger-index.ts';
import { madeBy, type StockLayer } from '../stock/layer.ts';
import { Shelf } from '../stock/shelf.ts';

/** Quantity that one move took out of what came in together. */
export interface LayerTaking {
  readonly move: Move;
  /** The lot; for soap and bars the batch that made them. "" where the ledger does not say. */
  readonly from: string;
  readonly quantity: Exact;
}

/** What left one item's shelf and what remains there. */
export interface ItemTakings {
  readonly takings: readonly LayerTaking[];
  /** What is on the shelf after the last move, in picking order. */
  readonly remaining: readonly StockLayer[];
}

/** Taken before it was there: the moves that wait for what comes in next, oldest first. */
type Waiting = { readonly move: Move; quantity: Exact }[];

/** What each live move took out of one item's stock, in the order in which moves count. */
export function takingsOf(book: Book, item: Item): readonly LayerTaking[] {
  const moves = liveMoves(historyOf(book, item), Infinity).filter(({ quantity }) => quantity < 0);
  // What our own posting writes names every lot: then no shelf need be followed through the years.
  return moves.every(({ lot }) => lot !== '')
    ? moves.map((move) => ({ move, from: move.lot, quantity: exact(move.quantity).neg() }))
    : walkLayers(book, item).takings;
}

/**
 * Follows one item through all its live moves, layer by layer, in the order in which they count for
 * its value (stock/valuation.ts). A move that names its lot is believed for its whole quantity; one
 * that names none takes what that order gives it, and what was not there yet from what comes next.
 */
export function walkLayers(book: Book, item: Item): ItemTakings {
  const history = historyOf(book, item);
  const moves = liveMoves(history, Infinity);
  const shelf = new Shelf();
  const takings: LayerTaking[] = [];
  const waiting: Waiting = [];
  const put = (layer: StockLayer): void => {
    repay(waiting, layer, takings);
    shelf.put(layer);
  };
  let nextLot = 0;
  for (const move of moves) {
    for (
      let lot = history.lots[nextLot];
      lot !== undefined && lot.received < Math.floor(move.when) + 1;
      lot = history.lots[nextLot]
    ) {
      put(layerOfLot(lot));
      nextLot += 1;
    }
    if (move.quantity > 0) put(layerOfMove(move, item, shelf));
    else if (move.quantity < 0) take(move, shelf, takings, waiting);
  }
  for (const lot of history.lots.slice(nextLot)) put(layerOfLot(lot));
  for (const { move, quantity } of waiting) {
    if (move.lot === '') takings.push({ move, from: '', quantity });
  }
  return { takings, remaining: shelf.filled };
}

function take(move: Move, shelf: Shelf, takings: LayerTaking[], waiting: Waiting): void {
  const quantity = exact(move.quantity).neg();
  const picks = shelf.take(quantity, move.lot);
  let missing = quantity;
  for (const pick of picks) {
    missing = missing.minus(pick.quantity);
    if (move.lot === '') takings.push({ move, from: pick.lot, quantity: pick.quantity });
  }
  if (move.lot !== '') takings.push({ move, from: move.lot, quantity });
  if (missing.gt(0)) waiting.push({ move, quantity: missing });
}

/** What comes in goes first to the moves that took more than was there, as the shelf itself counts it. */
function repay(waiting: Waiting, layer: StockLayer, takings: LayerTaking[]): void {
  let left = layer.quantity;
  for (let [oldest] = waiting; oldest !== undefined && left.gt(0); [oldest] = waiting) {
    const repaid = least(left, oldest.quantity);
    left = left.minus(repaid);
    oldest.quantity = oldest.quantity.minus(repaid);
    const { move } = oldest;
    if (move.lot === '') takings.push({ move, from: layer.lot, quantity: repaid });
    if (oldest.quantity.isZero()) waiting.shift();
  }
}

const layerOfLot = (lot: Lot): StockLayer => ({
  lot: lot.lot,
  came: lot.received,
  bestBefore: lot.bestBefore,
  quantity: exact(lot.quantity),
  unitValue: undefined,
  entry: lot.lot,
});

function layerOfMove(move: Move, item: Item, shelf: Shelf): StockLayer {
  const sameLot =
    move.lot === '' || item.kind !== 'material' ? undefined : shelf.named(move.lot)[0];
  return {
    lot: move.lot === '' ? madeBy(move, item) : move.lot,
    came: move.when,
    bestBefore: sameLot?.bestBefore,
    quantity: exact(move.quantity),
    unitValue: undefined,
    entry: move.entry,
  };
}
