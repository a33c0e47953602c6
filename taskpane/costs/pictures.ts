import type { Book, Design, Fair } from '../../src/domain/book/book.ts';
import { barCost, type CostLine } from '../../src/domain/cost/bar-cost.ts';
import { count } from '../../src/domain/kernel/count.ts';
import type { Day } from '../../src/domain/kernel/day.ts';
import { Exact, hundred, sum } from '../../src/domain/kernel/exact.ts';
import { compareNames } from '../../src/domain/kernel/names.ts';
import { andThen, answer, type Result, wrong } from '../../src/domain/kernel/result.ts';
import { USUAL_BARS } from '../../src/domain/recipe/plain-plan.ts';
import { moneyText } from '../format.ts';
import { lyingBars } from '../pictures/bars.ts';
import { linePlot } from '../pictures/line.ts';
import type { Picture } from '../pictures/picture.ts';
import { costBySize, evenAt, evenByPrice, LARGEST_BATCH } from './figures.ts';

/** Where the cost of a bar in a usual batch goes, the largest part first. */
export function whereCostGoes(book: Book, design: Design, asOf: Day): Result<Picture> {
  const { currency } = book.settings;
  return andThen(barCost(book, design, USUAL_BARS, asOf), ({ perBar, lines }) => {
    const parts = lines
      .filter((line) => !line.perBar.isZero())
      .sort((a, b) => b.perBar.comparedTo(a.perBar) || compareNames(a.name, b.name));
    const [first] = parts;
    if (first === undefined)
      return wrong(`${design.name} costs nothing yet, so there is no picture.`);
    const share = (part: Part): string =>
      `${part.perBar.div(perBar).times(hundred).toDecimalPlaces(0).toString()}\u00A0%`;
    return answer({
      key: 'parts',
      title: 'Where a bar’s cost goes',
      says: `In a batch of ${String(USUAL_BARS)} a bar costs ${moneyText(perBar, currency)} in full. The largest part is ${first.name}, ${share(first)}.`,
      ...lyingBars(
        fewParts(parts).map((part) => ({
          name: part.name,
          amount: `${moneyText(part.perBar, currency)} · ${share(part)}`,
          length: part.perBar.toNumber(),
        })),
      ),
      headers: ['Line', 'Per bar', 'Share'],
      rows: parts.map((part) => [part.name, moneyText(part.perBar, currency), share(part)]),
    });
  });
}

/** A line of a bar's cost. */
type Part = Pick<CostLine, 'name' | 'perBar'>;

/** The largest parts, and all smaller ones as one: the table has each. */
function fewParts(parts: readonly Part[]): readonly Part[] {
  if (parts.length <= MOST_PARTS + 1) return parts;
  const smaller = parts.slice(MOST_PARTS);
  return [
    ...parts.slice(0, MOST_PARTS),
    {
      name: `${String(smaller.length)} smaller lines`,
      perBar: sum(smaller.map(({ perBar }) => perBar)),
    },
  ];
}

const MOST_PARTS = 8;

/** The cost of a bar by batch size: it falls in steps as fills and molds fill up. */
export function costByBatch(book: Book, design: Design, asOf: Day): Result<Picture> {
  const { currency } = book.settings;
  return andThen(costBySize(book, design, asOf), (costs) => {
    const cheapest = Exact.min(...costs);
    const alone = costs[0] ?? cheapest;
    const size = costs.findIndex((cost) => cost.eq(cheapest)) + 1;
    return answer({
      key: 'sizes',
      title: 'Cost by batch size',
      says: alone.eq(cheapest)
        ? `A bar costs ${moneyText(alone, currency)} in a batch of any size.`
        : `A bar made alone costs ${moneyText(alone, currency)}. It is cheapest in a batch of ${String(size)}: ${moneyText(cheapest, currency)}.`,
      ...linePlot({
        points: costs.map((cost, index) => [index + 1, cost.toNumber()]),
        isStepped: true,
        across: 'Bars in the batch',
        acrossTicks: [1, 6, 12, 18, 24, 30, LARGEST_BATCH],
        acrossText: String,
        upText: (value) => axisMoney(value, currency),
        mark: { at: [size, cheapest.toNumber()], text: `cheapest: ${String(size)}` },
      }),
      headers: ['Bars', 'Cost of one'],
      rows: costs.map((cost, index) => [String(index + 1), moneyText(cost, currency)]),
    });
  });
}

/** Price against the bars that pay for a fair: below the line the day is a loss. */
export function priceAgainstBars(
  book: Book,
  design: Design,
  fair: Fair,
  asOf: Day,
): Result<Picture> {
  const { currency } = book.settings;
  return andThen(barCost(book, design, USUAL_BARS, asOf), ({ perBar }) => {
    const curve = evenByPrice(book, perBar, fair).flatMap(({ price, bars }) =>
      bars === undefined ? [] : [{ price, bars }],
    );
    const now = design.price === undefined ? undefined : evenAt(book, perBar, fair, design.price);
    const least = curve.at(-1);
    if (least === undefined || least.bars.isZero()) {
      return wrong(
        `${fair.fair} has no stall fee, travel or other cost, so it pays from the first bar.`,
      );
    }
    // Just over its cost a bar brings in so little that the line would leave the paper.
    const shown = curve.filter(({ bars }) => bars.lte(least.bars.times(8)));
    return answer({
      key: 'even',
      title: `Price and bars for ${fair.fair}`,
      says: sayEven(now, currency),
      ...linePlot({
        points: shown.map(({ price, bars }) => [price.toNumber(), bars.toNumber()]),
        isStepped: false,
        across: 'Price of one bar. Above the line: profit',
        acrossTicks: [shown[0], shown[Math.floor(shown.length / 2)], least].flatMap((point) =>
          point === undefined ? [] : [point.price.toNumber()],
        ),
        acrossText: (value) => axisMoney(value, currency),
        upText: (value) => count(value, 'bar'),
        ...markOfToday(now, shown),
      }),
      headers: ['Price', 'Bars to break even'],
      rows: curve.map(({ price, bars }) => [moneyText(price, currency), bars.toString()]),
    });
  });
}

/** Marks today's price on the line, where the line reaches it. */
function markOfToday(
  now: ReturnType<typeof evenAt> | undefined,
  shown: readonly { readonly price: Exact }[],
) {
  const [from, to] = [shown[0]?.price, shown.at(-1)?.price];
  if (now?.bars === undefined || from === undefined || to === undefined) return {};
  if (now.price.lt(from) || now.price.gt(to)) return {};
  const at = [now.price.toNumber(), now.bars.toNumber()] as const;
  return { mark: { at, text: `now: ${count(now.bars, 'bar')}` } };
}

function sayEven(now: ReturnType<typeof evenAt> | undefined, currency: string): string {
  if (now === undefined) return 'Fill in Price in Designs to see where it stands on the line.';
  const at = `At ${moneyText(now.price, currency)}`;
  return now.bars === undefined
    ? `${at} a bar brings in no more than it costs, so no number of bars pays for the fair.`
    : `${at} each, ${count(now.bars, 'bar')} pay for stall and travel.`;
}

/** Money on an axis: no cents where they are nought. */
function axisMoney(value: number, currency: string): string {
  return new Intl.NumberFormat('en', {
    style: 'currency',
    currency,
    currencyDisplay: 'narrowSymbol',
    trailingZeroDisplay: 'stripIfInteger',
  } as Intl.NumberFormatOptions).format(value);
}
