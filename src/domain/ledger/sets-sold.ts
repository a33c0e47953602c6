import type { Book } from '../book/book.ts';
import type { BarSet } from '../book/trade.ts';
import { exact, sum, zero } from '../kernel/exact.ts';
import { all, andThen, answer, type Result, wrong } from '../kernel/result.ts';
import { currencyDecimals } from '../money/currency.ts';
import { splitAmount } from '../money/split.ts';
import type { SoldLine, SoldSet } from './sale.ts';
import type { Needed } from './short-of.ts';

/** What sold sets take: bars, each at its part of the set's price, and packaging. */
export interface OutOfSets {
  readonly lines: readonly SoldLine[];
  readonly packaging: readonly Needed[];
}

/** Takes sets apart. Fails where a set has no price, or a bar in it none to share that price by. */
export function outOfSets(book: Book, sold: readonly SoldSet[]): Result<OutOfSets> {
  const each = all(
    sold.map(({ set, sets }) =>
      andThen(barsOfSet(book, set), (lines) =>
        Number.isInteger(sets) && sets > 0
          ? answer(lines.map((line) => ({ ...line, bars: line.bars * sets })))
          : wrong(`Sets of ${set.name} is ${sets}. Give a whole number, 1 or more.`),
      ),
    ),
  );
  const packaging = sold.flatMap(({ set, sets }) =>
    set.lines
      .filter(({ item }) => item.kind === 'material')
      .map(({ item, perSet }) => ({ item, quantity: perSet.times(exact(sets)) })),
  );
  return andThen(each, (lines) => answer({ lines: lines.flat(), packaging: joined(packaging) }));
}

/**
 * The bars of one set, a line for each design and price: the set's price is split over its bars by largest remainder
 * in proportion to what each is asked by itself, so that the lines add up to it to the cent.
 */
function barsOfSet({ settings }: Book, set: BarSet): Result<SoldLine[]> {
  if (set.price === undefined)
    return wrong(`${set.name} has no Price yet: fill it in on one of its lines in Sets.`);
  const bars = set.lines.flatMap(({ item, perSet }) =>
    item.kind === 'bars' ? Array.from({ length: perSet.toNumber() }, () => item.design) : [],
  );
  const unpriced = bars.find(({ price }) => price === undefined);
  if (unpriced !== undefined)
    return wrong(
      `${unpriced.name} has no Price in Designs, so its part of ${set.name} isn't known. Fill it in.`,
    );
  const parts = splitAmount(
    set.price,
    bars.map(({ price = zero }) => price),
    currencyDecimals(settings.currency),
  );
  const lines = new Map<string, SoldLine>();
  bars.forEach((design, at) => {
    const priceEach = parts[at] ?? zero;
    const key = `${design.name} ${priceEach.toString()}`;
    lines.set(key, { design, bars: (lines.get(key)?.bars ?? 0) + 1, priceEach });
  });
  return answer([...lines.values()]);
}

/** Each item once. */
function joined(needs: readonly Needed[]): Needed[] {
  const items = [...new Map(needs.map(({ item }) => [item.name, item])).values()];
  return items.map((item) => ({
    item,
    quantity: sum(
      needs.filter((need) => need.item.name === item.name).map((need) => need.quantity),
    ),
  }));
}
