import { describe, expect, it } from 'vitest';
import { dayOf } from '../../../src/domain/kernel/day.ts';
import { exact, toCell } from '../../../src/domain/kernel/exact.ts';
import { canMake } from '../../../src/domain/recipe/can-make.ts';
import { leftoversOnHand } from '../../../src/domain/recipe/leftovers-on-hand.ts';
import { readTables } from '../../support/ledger-of.ts';
import { type Tables, withCell, withRows, workshop } from '../../support/small-book.ts';

const DAY = dayOf(2024, 3, 1);

function most(design: string, tables: Tables, day = DAY): number | string {
  const book = readTables(tables);
  const found = book.designs.get(design.toLowerCase());
  if (found === undefined) throw new Error(design);
  const result = canMake(book, found, day);
  return result.ok ? result.value : result.failure.sentence;
}

const whiteBase = (quantity: number): Tables => withCell(workshop, 'Lots', 3, 'Quantity', quantity);

describe('how many bars stock allows', () => {
  it.each([
    // 50 g of white base a bar.
    ['2000 g', 2000, 40],
    ['a milligram less', 1999.999, 39],
    ['just one bar’s', 50, 1],
    ['less than one bar’s', 49.999, 0],
  ])('Plain Bar of %s of its base', (_, quantity, bars) => {
    expect(most('Plain Bar', whiteBase(quantity))).toBe(bars);
  });

  it('counts bars to start, whole fills and what a colour takes of the same base', () => {
    // 100 g poured for each good bar, and 30 g of Slate, 97 % base, for each two:
    // 43 bars are 4300 + 22 × 29.1 = 4940.2 of 5000 g, 44 are 5040.2 g.
    expect(most('Half Yield', workshop)).toBe(43);
  });

  it('goes by the scarcest, whichever that is', () => {
    // A dozen of Tide Pool takes 953.43 g of 5000 g clear base: boxes last for 50, base for some 60.
    expect(most('Tide Pool', workshop)).toBe(50);
    const boxes = withCell(workshop, 'Lots', 9, 'Quantity', 5000);
    expect(most('Tide Pool', boxes)).toBeGreaterThan(50);
    expect(most('Tide Pool', withCell(boxes, 'Lots', 9, 'Quantity', 7))).toBe(7);
  });

  it('looks at the shelf on the day: lots of later are not there yet', () => {
    expect(most('Plain Bar', workshop, dayOf(2024, 1, 4))).toBe(0);
    expect(most('Half Yield', workshop, dayOf(2024, 1, 20))).toBe(17);
  });

  it('finds the last bar of very many', () => {
    expect(most('Plain Bar', whiteBase(1e12))).toBe(2e10);
    expect(most('Plain Bar', whiteBase(1e12 - 1))).toBe(2e10 - 1);
  });
});

describe('leftovers on hand', () => {
  const tables = withRows(
    workshop,
    'LedgerLines',
    ['E1', '2024-02-01', 'left over', 'Slate leftover', 30, '', '', 'T1', '', ''],
    ['E2', '2024-02-02', 'wasted', 'Slate leftover', -12.5, '', '', '', '', ''],
    ['E3', '2024-02-02', 'spare', 'Teal × Tiles', 9, '', '', 'T1', '', ''],
    ['E4', '2024-02-03', 'wasted', 'Foam leftover', -4, '', '', '', '', ''],
  );
  const book = readTables(tables);

  it.each([
    ['Slate leftover', 17.5],
    ['Teal × Tiles', 9],
    // Below zero is none, and what no name names is none.
    ['Foam leftover', 0],
    ['Mist leftover', 0],
    ['Nothing leftover', 0],
  ])('%s: %d', (name, quantity) => {
    expect(toCell(leftoversOnHand(book, DAY, true)(name))).toBe(quantity);
    expect(leftoversOnHand(book, DAY, false)(name)).toEqual(exact(0));
  });

  it('are those of the day', () => {
    expect(toCell(leftoversOnHand(book, dayOf(2024, 2, 1), true)('Slate leftover'))).toBe(30);
  });
});
