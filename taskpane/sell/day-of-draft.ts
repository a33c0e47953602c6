import type { Book, Design } from '../../src/domain/book/book.ts';
import { findDesign, itemOfBars } from '../../src/domain/book/find.ts';
import { type Day, readDay } from '../../src/domain/kernel/day.ts';
import { Exact, exact, sum, zero } from '../../src/domain/kernel/exact.ts';
import { compareNames, nameKey } from '../../src/domain/kernel/names.ts';
import { all, andThen, answer, type Result, wrong } from '../../src/domain/kernel/result.ts';
import type { SellingDay, SoldLine } from '../../src/domain/ledger/sale.ts';
import { onHand } from '../../src/domain/stock/on-hand.ts';
import { day } from '../format.ts';
import type { Who } from '../task/task-kind.ts';
import { moneyIn, readTyped, readWhole } from '../typed-number.ts';
import { salesOf, type SellDraft, type TypedSale } from './draft.ts';

/** The selling day as the draft tells it, or what is missing or can't be. */
export function dayOfDraft(book: Book, draft: SellDraft, who: Who): Result<SellingDay> {
  const soldOn = readDay(draft.soldOn);
  if (soldOn === undefined) return wrong('Date sold is blank. Choose the day.');
  if (soldOn > who.today) {
    return wrong(`Date sold is ${day(soldOn)}, which is still to come. Choose today or before.`);
  }
  if (draft.fair !== '' && !book.fairs.has(nameKey(draft.fair))) {
    return wrong(`"${draft.fair}" is no longer in Fairs. Choose another, or put it back.`);
  }
  const inCurrency = moneyIn(book.settings.currency);
  const fees =
    draft.fees.trim() === '' ? answer(zero) : readTyped(draft.fees, 'Fees of the day', inCurrency);
  const lines = all(soldLines(draft).map((line) => readSale(book, line)));
  return andThen(lines, (sold) => {
    if (sold.length === 0) return wrong('Nothing is sold yet. Tap + or type the bars of a design.');
    return andThen(fees, (paid) =>
      answer({
        id: draft.id,
        soldOn,
        fair: draft.fair === '' ? '' : (book.fairs.get(nameKey(draft.fair))?.fair ?? ''),
        lines: sold,
        fees: paid,
        by: who.by,
      }),
    );
  });
}

/** Lines of which bars were said; a price alone sells nothing. */
const soldLines = ({ lines }: SellDraft): TypedSale[] =>
  lines.filter(({ bars }) => bars.trim() !== '');

function readSale(book: Book, line: TypedSale): Result<SoldLine> {
  const found = findDesign(book, line.design);
  if (!found.ok) {
    return wrong(`"${line.design}" is no longer in Designs. Put it back, or blank its bars.`);
  }
  const design = found.value;
  return andThen(readWhole(line.bars, `Bars of ${design.name}`, 1), (bars) =>
    andThen(priceOf(book, design, line), (priceEach) => answer({ design, bars, priceEach })),
  );
}

function priceOf({ settings }: Book, design: Design, { price }: TypedSale): Result<Exact> {
  if (price !== undefined)
    return readTyped(price, `Price of ${design.name}`, moneyIn(settings.currency));
  return design.price === undefined
    ? wrong(`Price of ${design.name} is blank. Type what a bar was sold for.`)
    : answer(design.price);
}

/** A design with what can be sold of it, and its lines: always at least one. */
export interface SaleRow {
  readonly design: Design;
  /** Bars there on the day and still there today. */
  readonly stock: Exact;
  readonly lines: readonly TypedSale[];
}

/** Every design with bars in stock or with bars said to be sold. */
export function saleRows(book: Book, draft: SellDraft, today: Day): SaleRow[] {
  return [...book.designs.values()]
    .map((design): SaleRow => {
      const lines = salesOf(draft.lines, design.name);
      const blank = { design: design.name, bars: '', price: undefined };
      return {
        design,
        stock: stockOf(book, design, draft, today),
        lines: lines.length === 0 ? [blank] : lines,
      };
    })
    .filter(({ stock, lines }) => stock.gt(0) || lines.some(({ bars }) => bars.trim() !== ''))
    .sort((a, b) => compareNames(a.design.name, b.design.name));
}

function stockOf(book: Book, design: Design, { soldOn }: SellDraft, today: Day): Exact {
  const item = itemOfBars(design);
  return Exact.min(onHand(book, item, readDay(soldOn) ?? today), onHand(book, item, today));
}

/** What has been typed so far: bars and money, lines that can't be read left out. */
export function soFar(book: Book, draft: SellDraft): { bars: number; takings: Exact } {
  const sold = soldLines(draft)
    .map((line) => readSale(book, line))
    .flatMap((line) => (line.ok ? [line.value] : []));
  return {
    bars: sold.reduce((total, { bars }) => total + bars, 0),
    takings: sum(sold.map(({ bars, priceEach }) => priceEach.times(exact(bars)))),
  };
}
