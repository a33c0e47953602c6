import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findDesign, findItem, findPlace, findSet } from '../../../src/domain/book/find.ts';
import { Exact, sum } from '../../../src/domain/kernel/exact.ts';
import { type GoneForGood, postGone, postSent } from '../../../src/domain/ledger/post-fate.ts';
import { postSales } from '../../../src/domain/ledger/post-sales.ts';
import type { SellingDay } from '../../../src/domain/ledger/sale.ts';
import { outOfSets } from '../../../src/domain/ledger/sets-sold.ts';
import { undoSales } from '../../../src/domain/ledger/undo-sales.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { stockValue } from '../../../src/domain/stock/valuation.ts';
import { changeForSales, changeForStocktake } from '../../../src/workbook/change.ts';
import { findTables } from '../../../src/workbook/find-tables.ts';
import { applyChange } from '../../support/apply-change.ts';
import { post, readTables, sure } from '../../support/ledger-of.ts';
import { day, pourOf } from '../../support/pour-of.ts';
import {
  table,
  tableData,
  type Tables,
  withCell,
  withRows,
  workshop,
} from '../../support/small-book.ts';

const DAY = day('2024-03-10');

const trading: Tables = {
  ...withCell(workshop, 'Designs', 2, 'Price', 4),
  Sales: table(
    'Sale | Sold on | Design | Bars | Price each | Fair | Fees | Place | Tender | Taken by',
  ),
  Places: table('Place | Sells as', ['Net Loft', 'on consignment'], ['Stall', 'own stall']),
  Sets: table(
    'Set | Item | Per set | Price',
    ['Pair', 'Tide Pool', 2, 20],
    ['Pair', 'Plain Bar', 1, ''],
    ['Pair', 'Box', 1, ''],
  ),
};

function pouredFrom(tables: Tables, differs = {}): Tables {
  const posted = post(tables, pourOf('Tide Pool', 12, differs), DAY);
  if (posted === undefined) throw new Error('The pour is refused.');
  return posted.after;
}
const poured = withRows(pouredFrom(trading), 'LedgerLines', [
  ...['PB', '2024-03-02', 'made', 'Plain Bar', 3, 'PB', 4.5, '', '', ''],
]);

const selling = (differs: Partial<SellingDay>): SellingDay => ({
  id: 'S1',
  soldOn: DAY,
  fair: '',
  lines: [],
  fees: new Exact(0),
  by: '',
  ...differs,
});

function sell(tables: Tables, differs: Partial<SellingDay>): Tables {
  const posting = sure(postSales(readTables(tables), selling(differs), DAY));
  return applyChange(tables, sure(changeForSales(posting, findTables(tableData(tables)))));
}

function stock(tables: Tables, ...names: string[]): string[] {
  const book = readTables(tables);
  return names.map((name) => onHand(book, sure(findItem(book, name)), DAY).toString());
}

const worth = (tables: Tables, ...names: string[]): string => {
  const book = readTables(tables);
  return sum(
    names.map((name) => sure(stockValue(book, sure(findItem(book, name)), DAY))),
  ).toString();
};

describe('a sold set', () => {
  const pairs = (sets: number) => ({
    sets: [{ set: sure(findSet(readTables(poured).sets, 'pair')), sets }],
  });

  it('takes its bars and its box, and splits its price by what they are asked alone', () => {
    // 20.00 by 9.50 : 9.50 : 4.00 is 8.26, 8.26 and 3.48 (8.2609, 8.2609 and 3.4783).
    const sold = sell(poured, pairs(2));
    expect(stock(sold, 'Tide Pool', 'Plain Bar', 'Box')).toEqual(['8', '1', '36']);
    expect(
      readTables(sold).sales.map(({ design, bars, priceEach }) => [design.name, bars, priceEach]),
    ).toEqual([
      ['Tide Pool', 4, 8.26],
      ['Plain Bar', 2, 3.48],
    ]);
  });

  it('is taken back whole, its box too', () => {
    const sold = sell(poured, pairs(1));
    const names = findTables(tableData(poured));
    const back = applyChange(
      sold,
      sure(changeForSales(sure(undoSales(readTables(sold), 'S1', DAY, '')), names)),
    );
    const all = ['Tide Pool', 'Plain Bar', 'Box'];
    expect(stock(back, ...all)).toEqual(stock(poured, ...all));
    expect(worth(back, ...all)).toBe(worth(poured, ...all));
  });

  it.each([
    [
      4,
      poured,
      '4 bars of Plain Bar are more than the 3 in stock. Record the pour first, or mend the count.',
    ],
    [
      1,
      withCell(poured, 'Lots', 9, 'Quantity', 12),
      '1 of Box is more than the 0 in stock. Enter the purchase first, or mend the count.',
    ],
    [
      1,
      withCell(poured, 'Designs', 2, 'Price', ''),
      "Plain Bar has no Price in Designs, so its part of Pair isn't known. Fill it in.",
    ],
    [
      1,
      withCell(poured, 'Sets', 1, 'Price', ''),
      'Pair has no Price yet: fill it in on one of its lines in Sets.',
    ],
    [0.5, poured, 'Sets of Pair is 0.5. Give a whole number, 1 or more.'],
  ])('%d: what it lacks is said', (sets, tables, sentence) => {
    const book = readTables(tables);
    const set = sure(findSet(book.sets, 'Pair'));
    const result = postSales(book, selling({ sets: [{ set, sets }] }), DAY);
    expect(result.ok ? '' : result.failure.sentence).toBe(sentence);
  });

  it('loses no cent of any price', () => {
    const cents = (most: number) => fc.integer({ min: 0, max: most }).map((each) => each / 100);
    fc.assert(
      fc.property(
        fc.record({
          price: cents(9999),
          asked: fc.tuple(cents(2000), cents(2000)),
          bars: fc.tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 7 })),
        }),
        ({ price, asked, bars }) => {
          const book = readTables({
            ...trading,
            Designs: table(
              'Design | Price',
              ...asked.map((each, at) => [`D${at}`, each === 0 ? 0.01 : each]),
            ),
            Layers: table('Design | Layer | Part | Item | Per bar | Per'),
            Plan: table('Plan line | Design | Bars | Ready by'),
            Sets: table(
              'Set | Item | Per set | Price',
              ['S', 'D0', bars[0], price === 0 ? 0.01 : price],
              ['S', 'D1', bars[1], ''],
            ),
          });
          const set = sure(findSet(book.sets, 'S'));
          const { lines } = sure(outOfSets(book, [{ set, sets: 3 }]));
          const total = sum(lines.map((line) => line.priceEach.times(line.bars)));
          expect(total.toString()).toBe(set.price?.times(3).toString());
          expect(lines.reduce((all, line) => all + line.bars, 0)).toBe(3 * (bars[0] + bars[1]));
        },
      ),
    );
  });
});

describe('seconds', () => {
  it.each([
    ['nothing', 0, '0'],
    ['half a bar', 0.5, '0.5'],
    ['as much as a bar', 1, '1'],
  ])('are kept at %s of a good bar’s materials', (_, share, ofABar) => {
    const kept = pouredFrom(trading, { good: 9, seconds: 2, secondsShare: new Exact(share) });
    const plain = pouredFrom(trading, { good: 9, seconds: 2 });
    expect(stock(kept, 'Tide Pool', 'Tide Pool seconds')).toEqual(['9', '2']);
    expect(worth(kept, 'Tide Pool', 'Tide Pool seconds')).toBe(worth(plain, 'Tide Pool'));
    const bar = Number(worth(kept, 'Tide Pool')) / 9;
    expect(Number(worth(kept, 'Tide Pool seconds')) / 2).toBeCloseTo(bar * Number(ofABar), 2);
  });

  it('are sold from a shelf of their own', () => {
    const kept = pouredFrom(trading, { good: 9, seconds: 2, secondsShare: new Exact(0.5) });
    const design = sure(findDesign(readTables(kept), 'Tide Pool'));
    const sold = sell(kept, {
      lines: [{ design, bars: 1, priceEach: new Exact(5), isSecond: true }],
      tender: 'cash',
    });
    expect(stock(sold, 'Tide Pool', 'Tide Pool seconds')).toEqual(['9', '1']);
    expect(readTables(sold).sales[0]).toMatchObject({ isSecond: true, tender: 'cash' });
  });
});

describe('bars that are given or wasted', () => {
  const gone = (differs: Partial<GoneForGood>, tables = poured) => {
    const book = readTables(tables);
    const item = sure(findItem(book, 'Tide Pool'));
    return postGone(
      book,
      {
        id: 'G1',
        when: DAY,
        by: 'Ada',
        item,
        quantity: new Exact(2),
        why: 'the school fair',
        ...differs,
      },
      DAY,
    );
  };

  it('leave stock with who and why', () => {
    const posting = sure(gone({ givenAs: 'donation' }));
    expect(
      posting.moves.map(({ entry, reason, quantity, lot, note }) => [
        entry,
        reason,
        quantity.toString(),
        lot,
        note,
      ]),
    ).toEqual([['G1.01', 'given', '-2', 'B1', 'donation: the school fair']]);
    const after = applyChange(
      poured,
      sure(changeForStocktake(posting, findTables(tableData(poured)))),
    );
    expect(stock(after, 'Tide Pool')).toEqual(['10']);
    const again = gone({ givenAs: 'gift' }, after);
    expect(again.ok ? '' : again.failure.sentence).toMatch(/^G1 is in LedgerLines already/u);
    expect(sure(gone({ why: '' })).moves[0]).toMatchObject({ reason: 'wasted', note: '' });
  });

  it.each([
    [{ quantity: new Exact(0.5) }, /^Quantity of Tide Pool is 0\.5\. Give a whole number/u],
    [{ quantity: new Exact(0) }, /^Quantity of Tide Pool is 0\./u],
    [{ quantity: new Exact(13) }, /^13 bars of Tide Pool are more than the 12 in stock/u],
  ])('are refused where they can’t be', (differs, sentence) => {
    const result = gone(differs);
    expect(result.ok ? '' : result.failure.sentence).toMatch(sentence);
  });
});

describe('bars at a place', () => {
  const send = (tables: Tables, id: string, bars: number, isBack = false): Tables => {
    const book = readTables(tables);
    const place = sure(findPlace(book.places, 'Net Loft'));
    const design = sure(findDesign(book, 'Tide Pool'));
    const posting = sure(
      postSent(book, { id, when: DAY, by: '', design, place, bars, isBack }, DAY),
    );
    return applyChange(tables, sure(changeForStocktake(posting, findTables(tableData(tables)))));
  };
  const both = ['Tide Pool', 'Tide Pool @ Net Loft'];

  it('stay in stock at their cost, go back, and are sold from where they lie', () => {
    const sent = send(poured, 'T1', 5);
    expect(stock(sent, ...both)).toEqual(['7', '5']);
    expect(worth(sent, ...both)).toBe(worth(poured, 'Tide Pool'));
    const back = send(sent, 'T2', 2, true);
    expect(stock(back, ...both)).toEqual(['9', '3']);
    expect(worth(back, ...both)).toBe(worth(poured, 'Tide Pool'));
    const book = readTables(back);
    const design = sure(findDesign(book, 'Tide Pool'));
    const place = sure(findPlace(book.places, 'Net Loft'));
    const sold = sell(back, { place, lines: [{ design, bars: 1, priceEach: new Exact(9) }] });
    expect(stock(sold, ...both)).toEqual(['9', '2']);
    expect(readTables(sold).sales[0]?.place?.name).toBe('Net Loft');
  });
});
