import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book } from '../../../src/domain/book/book.ts';
import { findItem, findMaterial } from '../../../src/domain/book/find.ts';
import { Exact } from '../../../src/domain/kernel/exact.ts';
import { receiveDelivery } from '../../../src/domain/ledger/receive.ts';
import { undoDelivery } from '../../../src/domain/ledger/undo-delivery.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { stockValue, unitCost } from '../../../src/domain/stock/valuation.ts';
import { changeForDelivery, changeForUndoneLots } from '../../../src/workbook/change.ts';
import { findTables } from '../../../src/workbook/find-tables.ts';
import type { Cell } from '../../../src/workbook/port.ts';
import { applyChange } from '../../support/apply-change.ts';
import { itemsOf, post, readTables, sure } from '../../support/ledger-of.ts';
import { day, pourOf } from '../../support/pour-of.ts';
import {
  tableData,
  type Tables,
  withRows,
  withSetting,
  workshop,
} from '../../support/small-book.ts';

/** One material of a delivery, in figures. */
interface Came {
  readonly material: string;
  readonly quantity: number;
  readonly paid: number;
}

function received(tables: Tables, on: number, came: readonly Came[], freight = 0): Tables {
  const book = readTables(tables);
  const lots = receiveDelivery(book, {
    id: 'D1',
    received: on,
    supplier: 'Cove Supply',
    freight: new Exact(freight),
    shareFreightBy: 'value',
    lines: came.map(({ material, quantity, paid }) => ({
      material: sure(findMaterial(book, material)),
      lot: '',
      quantity: new Exact(quantity),
      paid: new Exact(paid),
      bestBefore: undefined,
    })),
  });
  const change = sure(changeForDelivery(sure(lots), findTables(tableData(tables))));
  return applyChange(tables, change);
}

const lotsOf = (tables: Tables): string[] =>
  readTables(tables).lots.flatMap(({ lot }) => (lot.startsWith('D1.') ? [lot] : []));

function undone(tables: Tables, lots = lotsOf(tables)): Tables {
  const taken = sure(undoDelivery(readTables(tables), lots));
  return applyChange(tables, sure(changeForUndoneLots(taken, findTables(tableData(tables)))));
}

const refusal = (tables: Tables): string => {
  const result = undoDelivery(readTables(tables), lotsOf(tables));
  return result.ok ? 'undone' : result.failure.sentence;
};

const move = (entry: string, on: string, lot: string, quantity: number): Cell[] => [
  entry,
  on,
  'wasted',
  'Clear base',
  quantity,
  lot,
  '',
  '',
  '',
  '',
];

/** What can be asked of each item's stock, to the last digit. */
const stockOf = (book: Book, days: readonly number[]): string[] =>
  itemsOf(book).flatMap((item) =>
    days.map((on) => {
      const [value, cost] = [stockValue(book, item, on), unitCost(book, item, on)];
      return [
        item.name,
        on,
        onHand(book, item, on),
        value.ok ? value.value : value.failure.sentence,
        cost.ok ? cost.value : cost.failure.sentence,
      ].join(' ');
    }),
  );

const LATER = day('2024-03-05');
const poured = post(workshop, pourOf('Tide Pool', 12), day('2024-03-01'));
if (poured === undefined) throw new Error('The pour was not posted.');

const anyCame = fc.uniqueArray(
  fc.record({
    material: fc.constantFrom('Clear base', 'Box', 'Glycerin', 'Blue mica'),
    quantity: fc.integer({ min: 1, max: 5000 }),
    paid: fc.integer({ min: 0, max: 9000 }).map((cents) => cents / 100),
  }),
  { minLength: 1, selector: ({ material }) => material },
);

describe('undoing a delivery', () => {
  it('leaves stock, value and unit cost of every item exactly as if it never came', () => {
    fc.assert(
      fc.property(
        anyCame,
        fc.integer({ min: 0, max: 30 }),
        fc.constantFrom('FIFO', 'Average'),
        (came, freight, valuation) => {
          const before = withSetting(poured.after, 'Valuation', valuation);
          const after = received(before, LATER, came, freight);
          const days = [LATER - 1, LATER, LATER + 9];
          const [was, with_] = [before, after].map((tables) => stockOf(readTables(tables), days));
          expect(with_).not.toEqual(was);
          expect(stockOf(readTables(undone(after)), days)).toEqual(was);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('is refused whenever anything was taken of it, and only then', () => {
    const anyMove = fc.record({
      lot: fc.constantFrom('', 'C1', 'C2', 'D1.01'),
      quantity: fc.integer({ min: 1, max: 3000 }),
      on: fc.constantFrom('2024-02-20', '2024-03-05', '2024-03-08'),
    });
    fc.assert(
      fc.property(fc.array(anyMove, { maxLength: 4 }), (moves) => {
        const came = { material: 'Clear base', quantity: 1000, paid: 9 };
        const rows = moves.map(({ lot, quantity, on }, index) =>
          move(`W-${String(index)}`, on, lot, -quantity),
        );
        const all = withRows(received(workshop, LATER, [came]), 'LedgerLines', ...rows);
        const without = withRows(
          workshop,
          'LedgerLines',
          ...rows.filter(([, , , , , lot]) => lot !== 'D1.01'),
        );
        const isNamed = moves.some(({ lot }) => lot === 'D1.01');
        const [book, bare] = [readTables(all), readTables(without)];
        const item = sure(findItem(book, 'Clear base'));
        const end = LATER + 9;
        const worth = (of: Book) => sure(stockValue(of, item, end));
        // Untouched: all that it cost is still there, and without it nothing would be owed.
        const isWhole =
          worth(book).minus(worth(bare)).eq(9) &&
          [LATER, end].every((on) => !onHand(bare, item, on).isNegative());
        expect(undoDelivery(book, ['D1.01']).ok).toBe(!isNamed && isWhole);
      }),
      { numRuns: 60 },
    );
  });

  const came: Came = { material: 'Clear base', quantity: 1000, paid: 9 };
  it('says which lines name a lot, or took from it, or were averaged with it, and what to do', () => {
    const full = received(workshop, LATER, [came]);
    const mend = 'Put the quantity right by a count instead, and a wrong price in Lots.';
    expect(refusal(withRows(full, 'LedgerLines', move('W-1', '2024-03-06', 'D1.01', -5)))).toBe(
      `Lot D1.01 of Clear base can't be undone, since it is named by ledger line W-1. ${mend}`,
    );
    // By hand: 5000 of C1 and C2 go first, so 200 of the 1000.
    expect(refusal(withRows(full, 'LedgerLines', move('W-1', '2024-03-06', '', -5200)))).toBe(
      `Lot D1.01 of Clear base can't be undone, since 200 g of it went to lines of the ledger that name no lot, or that took more of another lot than there was. ${mend}`,
    );
    const averaged = withSetting(full, 'Valuation', 'Average');
    expect(refusal(withRows(averaged, 'LedgerLines', move('W-1', '2024-03-06', 'C1', -5)))).toBe(
      `Lot D1.01 of Clear base can't be undone, since its cost is in the average of ledger line W-1, from its day or later. ${mend}`,
    );
    expect(refusal(withRows(averaged, 'LedgerLines', move('W-1', '2024-03-04', 'C1', -5)))).toBe(
      'undone',
    );
  });

  it('is refused whole where one of its lots was used', () => {
    const both = received(workshop, LATER, [came, { ...came, material: 'Box', quantity: 5 }]);
    expect(
      refusal(withRows(both, 'LedgerLines', move('W-1', '2024-03-06', 'D1.01', -5))),
    ).toContain('Lot D1.01 of Clear base');
  });

  it('goes on where some of its lots are gone, and says so where all are', () => {
    const both = received(workshop, LATER, [came, { ...came, material: 'Box', quantity: 5 }]);
    const lots = lotsOf(both);
    const gone = undone(undone(both, ['D1.01']), lots);
    expect(stockOf(readTables(gone), [LATER])).toEqual(stockOf(readTables(workshop), [LATER]));
    const again = undoDelivery(readTables(gone), lots);
    expect(!again.ok && again.failure.sentence).toBe(
      'None of its lots is in Lots any more: the delivery is undone already.',
    );
  });

  it("leaves a column of the maker's own as it is, and reads the rest as a blank row", () => {
    const full = received(workshop, LATER, [came]);
    const [headers = [], ...rows] = full['Lots'] ?? [];
    const own = { ...full, Lots: [[...headers, 'Shelf'], ...rows.map((row) => [...row, 'top'])] };
    const after = undone(own);
    expect(after['Lots']?.at(-1)).toEqual(['', '', '', '', '', '', '', '', 'top']);
    expect(readTables(after).lots).toHaveLength(9);
  });
});
