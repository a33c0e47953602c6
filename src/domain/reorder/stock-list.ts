import type { Book, Item } from '../book/book.ts';
import { itemOfBars, itemOfMaterial } from '../book/find.ts';
import type { Day } from '../kernel/day.ts';
import type { Exact } from '../kernel/exact.ts';
import { compareNames } from '../kernel/names.ts';
import type { Result } from '../kernel/result.ts';
import { packsToOrder, reorderPoint } from './reorder-point.ts';
import { indexOf } from '../stock/ledger-index.ts';
import { onHand } from '../stock/on-hand.ts';
import { stockAt } from '../stock/valuation.ts';

export interface StockLine {
  readonly item: Item;
  /** The material's kind, or leftover, spare, bars, seconds, placed. */
  readonly kind: string;
  readonly onHand: Exact;
  readonly value: Result<Exact>;
  /** For materials only. */
  readonly reorderPoint: Result<Exact> | undefined;
  readonly packs: Result<Exact> | undefined;
  readonly bestBefore: Day | undefined;
}

/** All materials, then leftover soap, spare pieces and bars that are on hand. */
export function stockList(book: Book, asOf: Day): StockLine[] {
  return [...book.materials.values()]
    .map(itemOfMaterial)
    .concat(madeItems(book).filter((item) => !onHand(book, item, asOf).isZero()))
    .map((item) => stockLine(book, item, asOf))
    .sort(
      (a, b) =>
        kindRank(a) - kindRank(b) ||
        compareNames(a.kind, b.kind) ||
        compareNames(a.item.name, b.item.name),
    );
}

function stockLine(book: Book, item: Item, asOf: Day): StockLine {
  const stock = stockAt(book, item, asOf);
  const material = item.kind === 'material' ? item.material : undefined;
  const dated = stock.filled.flatMap((layer) => layer.bestBefore ?? []);
  return {
    item,
    kind: material?.kind ?? item.kind,
    onHand: stock.onHand,
    value: stock.value,
    reorderPoint: material && reorderPoint(book, material, asOf),
    packs: material && packsToOrder(book, material, asOf),
    bestBefore: dated.length === 0 ? undefined : Math.min(...dated),
  };
}

/** Leftovers and spares that the ledger has ever had, and the bars of every design. */
export function madeItems(book: Book): Item[] {
  const items = new Map<string, Item>();
  for (const { moves } of indexOf(book).values()) {
    for (const { item } of moves.slice(0, 1))
      if (item.kind !== 'material') items.set(item.name, item);
  }
  for (const design of book.designs.values()) items.set(design.name, itemOfBars(design));
  return [...items.values()];
}

const order = [
  'base',
  'colourant',
  'fragrance',
  'extra',
  'packaging',
  'leftover',
  'spare',
  'bars',
  'seconds',
  'placed',
];
const kindRank = ({ kind }: StockLine): number => order.indexOf(kind);
