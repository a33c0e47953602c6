import type { Book } from '../../src/domain/book/book.ts';
import { itemOfMaterial } from '../../src/domain/book/find.ts';
import type { Exact } from '../../src/domain/kernel/exact.ts';
import { nameKey, nearestName } from '../../src/domain/kernel/names.ts';
import type { NewLot } from '../../src/domain/ledger/receive.ts';
import { stockAt } from '../../src/domain/stock/valuation.ts';
import { unitMoney } from '../format.ts';
import type { Question } from '../task/question.ts';

/** What to ask of a delivery before it is written: a price far from the last, a supplier not known. */
export const questionsOf = (book: Book, lots: readonly NewLot[]): Question[] => [
  ...supplierQuestion(book, lots[0]?.supplier ?? ''),
  ...lots.flatMap((lot) => priceQuestion(book, lot)),
];

/** Suppliers that materials or lots name, each once. */
export function suppliersIn(book: Book): string[] {
  const known = [...book.materials.values(), ...book.lots];
  return [...new Set(known.map(({ supplier }) => supplier))].filter((name) => name !== '');
}

/** Nothing is asked of the first supplier of all. */
function supplierQuestion(book: Book, supplier: string): Question[] {
  const known = suppliersIn(book);
  const isKnown = known.some((name) => nameKey(name) === nameKey(supplier));
  if (supplier === '' || known.length === 0 || isKnown) return [];
  const near = nearestName(supplier, known);
  const hint = near === undefined ? '' : ` Did you mean ${near}?`;
  return [
    {
      key: `supplier ${supplier}`,
      sentence: `Nothing came from ${supplier} before.${hint}`,
      yes: `${supplier} is a new supplier`,
    },
  ];
}

/** What a unit landed at. */
export const landedAt = ({ paid, freight, quantity }: NewLot): Exact =>
  paid.plus(freight).div(quantity);

/** What a unit landed at the last time; undefined where nothing came before, or for nothing. */
export function lastLandedAt(book: Book, { material, received }: NewLot): Exact | undefined {
  const last = stockAt(book, itemOfMaterial(material), received).newestUnitCost;
  return last?.isZero() === true ? undefined : last;
}

function priceQuestion(book: Book, lot: NewLot): Question[] {
  const [each, last] = [landedAt(lot), lastLandedAt(book, lot)];
  if (last === undefined || (each.lte(last.times(FAR)) && each.times(FAR).gte(last))) return [];
  const { name, unit } = lot.material;
  const money = (value: Exact): string => unitMoney(value, book.settings.currency, unit);
  return [
    {
      key: `price ${lot.lot} ${each.toString()} ${last.toString()}`,
      sentence: `${name}: ${money(each)} is far from the last price, ${money(last)}. Check packs and paid.`,
      yes: `${name} did cost ${money(each)}`,
    },
  ];
}

/** Twice or half of the last price is more often a slip of packs than a change of price. */
const FAR = 2;
