import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book, Item, Lot, Move } from '../../../src/domain/book/book.ts';
import { itemOfMaterial } from '../../../src/domain/book/find.ts';
import { exact } from '../../../src/domain/kernel/exact.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { ItemHistory } from '../../../src/domain/stock/item-history.ts';
import { layersLeft } from '../../../src/domain/stock/layers-left.ts';
import { historyOf } from '../../../src/domain/stock/ledger-index.ts';
import type { StockLayer } from '../../../src/domain/stock/layer.ts';
import { stockAt, stockValue } from '../../../src/domain/stock/valuation.ts';
import { Walk } from '../../../src/domain/stock/walk.ts';
import { LAST_DAY } from '../../support/arbitrary-book.ts';
import { workedWorkshop } from '../../support/arbitrary-pours.ts';
import { itemsOf, ledgerOf, readTables } from '../../support/ledger-of.ts';
import type { Tables } from '../../support/small-book.ts';

const DAY = 45_000;
const material = { name: 'Fog', unit: 'g', packPrice: undefined } as unknown as Lot['material'];
const clay = itemOfMaterial(material);
const items = [clay, { kind: 'leftover', name: 'Fog leftover', unit: 'g' } as unknown as Item];

/** What an item may have received: at most a lot of each name, so many days after the first. */
const lot = fc.record({
  lot: fc.constantFrom('A', 'b 1', 'B 2', 'C'),
  received: fc.integer({ min: 0, max: 12 }).map((half) => DAY + half / 2),
  bestBefore: fc.constantFrom(undefined, DAY + 3, DAY + 400),
  quantity: fc.constantFrom(1, 2.5, 10, 10, 100, 1 / 3, 0.000001),
  paid: fc.nat(5000).map((cents) => cents / 100),
  freight: fc.constantFrom(0, 0.07),
});

/** Mostly what a tidy ledger holds, late enough and little; now and then anything else. */
const tidy = fc.record({
  when: fc.integer({ min: 12, max: 16 }).map((half) => DAY + half / 2),
  quantity: fc.constantFrom(-0.5, -0.5, -0.000001, 0),
  reason: fc.constant('used'),
  lot: fc.constantFrom('A', 'a ', 'b 1', 'B 2', 'C'),
  value: fc.constantFrom(undefined, -1),
  note: fc.constant(''),
});
const madeThing = fc.record({
  when: fc.integer({ min: 0, max: 12 }).map((half) => DAY + half / 2),
  quantity: fc.constantFrom(1, 3, 12.5),
  reason: fc.constant('made'),
  lot: fc.constantFrom('A', 'b 1', 'B 2', 'C'),
  value: fc.constantFrom(0.25, 0.25, 1, 1, 7, 7, undefined),
  note: fc.constant(''),
});
const anyMove = fc.record({
  when: fc.integer({ min: 0, max: 16 }).map((half) => DAY + half / 2),
  quantity: fc.constantFrom(-20, -1, 1, 2, -1 / 3, 1e-7),
  reason: fc.constantFrom('used', 'counted', 'reversed'),
  lot: fc.constantFrom('', 'A', ' a', 'D'),
  value: fc.constantFrom(undefined, 1, 2),
  note: fc.constantFrom('', 'E0', 'E1', 'e2'),
});

const history = fc
  .record({
    item: fc.constantFrom(...items),
    lots: fc
      .tuple(fc.boolean(), fc.uniqueArray(lot, { selector: (drawn) => drawn.lot, maxLength: 4 }))
      .map(([hasLots, drawn]) => (hasLots ? drawn : [])),
    moves: fc
      .tuple(
        fc.array(tidy, { maxLength: 4 }),
        fc.uniqueArray(madeThing, { selector: (drawn) => drawn.lot, maxLength: 4 }),
        fc.array(anyMove, { maxLength: 1 }),
        fc.constantFrom(0, 1, 2, 3, 4, 5),
      )
      .map(([taken, made, any, kind]) => [
        ...(kind < 3 ? made : []),
        ...taken,
        ...(kind === 0 ? any : []),
      ]),
    isTurned: fc.boolean(),
  })
  .map(({ item, lots, moves, isTurned }) => {
    const received = lots
      .map((drawn) => ({ ...drawn, material, supplier: '', paidBy: '' }))
      .sort((a, b) => a.received - b.received || (nameKey(a.lot) < nameKey(b.lot) ? -1 : 1));
    const lines = moves.map((line, at) => ({ ...line, item, entry: `E${at}`, batch: '', by: '' }));
    const ledger = ledgerOf((isTurned ? lines.reverse() : lines) as Move[]);
    return {
      item,
      history: new ItemHistory(ledger, Int32Array.from(lines.keys()), received),
    };
  });

const inWords = ({ lot: name, came, bestBefore, quantity, unitValue, entry }: StockLayer): string =>
  [name, came, bestBefore, quantity, unitValue, entry].join('; ');

describe('what an orderly history leaves', () => {
  it('is what walking it move by move leaves, to the last digit', () => {
    const seen = { orderly: 0, others: 0, made: 0 };
    fc.assert(
      fc.property(history, ({ item, history: drawn }) => {
        const left = layersLeft(drawn);
        if (left === undefined) {
          seen.others += 1;
          return;
        }
        seen.orderly += 1;
        if (drawn.lots.length === 0 && left.filled.length > 0) seen.made += 1;
        const walk = new Walk(item, drawn, Infinity, false);
        expect(left.filled.map(inWords)).toEqual(walk.shelf.filled.map(inWords));
        expect(walk.shelf.owed.isZero()).toBe(true);
        expect(String(left.newest?.unitValue)).toBe(String(walk.newestUnitCost));
      }),
      { numRuns: 6000 },
    );
    for (const [kind, count] of Object.entries(seen)) expect(count, kind).toBeGreaterThan(100);
  });

  const plain = { when: DAY + 6, quantity: -1, reason: 'used', lot: 'A', note: '' } as const;
  const lotA = { lot: 'A', material, received: DAY, quantity: 5, paid: 3, freight: 0 } as Lot;
  const isOrderly = (lots: readonly Lot[], ...moves: readonly Partial<Move>[]): boolean => {
    const item = lots.length > 0 ? items[0] : items[1];
    const lines = moves.map((move, at) => ({ item, entry: `E${at}`, ...plain, ...move }));
    const rows = Int32Array.from(lines.keys());
    return layersLeft(new ItemHistory(ledgerOf(lines as Move[]), rows, lots)) !== undefined;
  };

  it.each<[string, readonly Lot[], readonly Partial<Move>[], boolean]>([
    ['taken by name', [lotA], [{}, { lot: ' a' }], true],
    ['used up', [lotA], [{ quantity: -5 }], true],
    ['taken on the day it came', [lotA], [{ when: DAY }], true],
    ['taken beyond what there was', [lotA], [{ quantity: -3 }, { quantity: -3 }], false],
    ['taken before it came', [lotA], [{ when: DAY - 1 }], false],
    ['taken without a name', [lotA], [{ lot: '' }], false],
    ['taken by a name that never came', [lotA], [{ lot: 'B' }], false],
    ['counted back into its lot', [lotA], [{ quantity: 1, value: 1 }], false],
    ['taken back', [lotA], [{}, { quantity: 1, reason: 'reversed', note: 'E0' }], false],
    ['not whole in millionths', [lotA], [{ quantity: -1e-7 }], false],
    ['made with a value', [], [{ quantity: 2, value: 1 }, {}], true],
    ['a material that only moves put in', [], [{ quantity: 2, value: 1, item: clay }], false],
    ['counted, and so not the newest', [], [{ quantity: 2, value: 1, reason: 'counted' }], false],
    ['made without a value', [], [{ quantity: 2 }, {}], false],
    [
      'made twice by one name',
      [],
      [
        { quantity: 2, value: 1 },
        { quantity: 2, value: 1 },
      ],
      false,
    ],
  ])('%s', (_, lots, moves, orderly) => {
    expect(isOrderly(lots, ...moves)).toBe(orderly);
  });
});

/** Value by walking, for the whole books below. */
function walkedValue(book: Book, item: Item, day: number): string {
  const isAverage = book.settings.valuation === 'Average';
  const { shelf, pool, newestUnitCost } = new Walk(item, historyOf(book, item), day, isAverage);
  if (isAverage) return String(pool?.value);
  const worth = shelf.filled.reduce(
    (total, { quantity, unitValue }) => total.plus(quantity.times(unitValue ?? 0)),
    exact(0),
  );
  return worth.minus(shelf.owed.times(newestUnitCost ?? 0)).toString();
}

const withValuation = (tables: Tables, valuation: string): Tables => ({
  ...tables,
  Settings: [
    ['Setting', 'Value'],
    ['Valuation', valuation],
  ],
});

it.each(['FIFO', 'Average'])(
  'stock is worth what walking to any day makes it, by %s',
  (valuation) => {
    fc.assert(
      fc.property(workedWorkshop, fc.constantFrom(0, 260, 300, 340, 380), (tables, back) => {
        const book = readTables(withValuation(tables, valuation));
        const day = LAST_DAY - back;
        for (const item of itemsOf(book)) {
          const value = stockValue(book, item, day);
          if (value.ok) expect(value.value.toString()).toBe(walkedValue(book, item, day));
          // By Average a batch takes before it puts back, so the same valuation is walked.
          const isAverage = valuation === 'Average';
          const { filled } = new Walk(item, historyOf(book, item), day, isAverage).shelf;
          expect(stockAt(book, item, day).filled.map(inWords)).toEqual(filled.map(inWords));
        }
      }),
      { numRuns: 60 },
    );
  },
);
