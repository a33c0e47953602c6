import type { Book, Design } from '../../domain/book/book.ts';
import { itemOfBars } from '../../domain/book/find.ts';
import { barCost } from '../../domain/cost/bar-cost.ts';
import { type Day, isoDate } from '../../domain/kernel/day.ts';
import { type Exact, toCell } from '../../domain/kernel/exact.ts';
import { compareNames } from '../../domain/kernel/names.ts';
import { andThen, answer, type Result } from '../../domain/kernel/result.ts';
import { roundMoney } from '../../domain/money/currency.ts';
import { canMake } from '../../domain/recipe/can-make.ts';
import { USUAL_BARS } from '../../domain/recipe/plain-plan.ts';
import { onHand } from '../../domain/stock/on-hand.ts';
import { stockList } from '../../domain/reorder/stock-list.ts';
import type { Cell, ValueColumn, ValueSheet } from '../port.ts';

/** One column of answers about each thing of a list. */
interface Answer<T> extends ValueColumn {
  readonly of: (thing: T) => Cell;
  readonly isCost?: true;
}

/** What is in stock and what can be made of it, as values of one day. */
export function answerSheets(book: Book, today: Day, withCosts: boolean): ValueSheet[] {
  const as = (name: string, line: string) => ({
    name,
    lines: [name, `${line} on ${isoDate(today)}. Values only: they don't change with the tables.`],
    table: `Partner_${name.replaceAll(' ', '_')}`,
  });
  const designs = [...book.designs.values()].sort((a, b) => compareNames(a.name, b.name));
  return [
    {
      ...as('Stock list', 'What was in stock'),
      ...listed(stockList(book, today), stockAnswers, withCosts),
    },
    {
      ...as('Bars', 'Bars in stock, and what could be made'),
      ...listed(designs, barAnswers(book, today), withCosts),
    },
  ].filter(({ rows }) => rows.length > 0);
}

function listed<T>(
  things: readonly T[],
  answers: readonly Answer<T>[],
  withCosts: boolean,
): Pick<ValueSheet, 'columns' | 'rows'> {
  const shown = answers.filter(({ isCost }) => withCosts || isCost === undefined);
  return {
    columns: shown.map(({ header, format }) => ({ header, format })),
    rows: things.map((thing) => shown.map(({ of }) => of(thing))),
  };
}

const stockAnswers: readonly Answer<ReturnType<typeof stockList>[number]>[] = [
  { header: 'Item', format: 'text', of: ({ item }) => item.name },
  { header: 'Kind', format: 'text', of: ({ kind }) => kind },
  { header: 'On hand', format: 'number', of: (line) => toCell(line.onHand) },
  { header: 'Unit', format: 'text', of: ({ item }) => item.unit },
  { header: 'Value', format: 'money', isCost: true, of: ({ value }) => orBlank(value) },
  { header: 'Reorder point', format: 'number', of: (line) => orBlank(line.reorderPoint) },
  { header: 'Order packs', format: 'whole', of: ({ packs }) => orBlank(packs) },
  { header: 'Earliest best before', format: 'date', of: ({ bestBefore }) => bestBefore ?? '' },
];

const barAnswers = (book: Book, today: Day): readonly Answer<Design>[] => [
  { header: 'Design', format: 'text', of: ({ name }) => name },
  {
    header: 'On hand',
    format: 'whole',
    of: (design) => toCell(onHand(book, itemOfBars(design), today)),
  },
  {
    header: 'Can make now',
    format: 'whole',
    of: (design) => {
      const bars = canMake(book, design, today);
      return bars.ok ? bars.value : '';
    },
  },
  {
    header: 'Cost per bar',
    format: 'money',
    isCost: true,
    of: (design) =>
      orBlank(
        andThen(barCost(book, design, USUAL_BARS, today), ({ perBar }) =>
          answer(roundMoney(perBar, book.settings.currency)),
        ),
      ),
  },
];

/** What can't be answered stays blank. */
const orBlank = (result: Result<Exact> | undefined): Cell =>
  result?.ok === true ? toCell(result.value) : '';
