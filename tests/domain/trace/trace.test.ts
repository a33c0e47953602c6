import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book } from '../../../src/domain/book/book.ts';
import { walkLayers } from '../../../src/domain/trace/layer-takings.ts';
import { recallOf } from '../../../src/domain/trace/recall.ts';
import { trace } from '../../../src/domain/trace/trace.ts';
import { indexOf } from '../../../src/domain/stock/ledger-index.ts';
import { stockAt } from '../../../src/domain/stock/valuation.ts';
import { readDay } from '../../../src/domain/kernel/day.ts';
import { table, type Tables, withRows, withSetting } from '../../support/small-book.ts';
import { bookOf, refusal, sound } from '../label/label-book.ts';
import { randomLedger } from './random-ledger.ts';

const LATE = readDay('2030-01-01') ?? 0;
const RUNS = { numRuns: 400 };

const linesOf = (book: Book, name: string) => sound(trace(book, name));
const batchesOf = (book: Book, lot: string) =>
  [...new Set(linesOf(book, lot).map(({ batch }) => batch))].sort();
const lotsOf = (book: Book, batch: string, lots: readonly string[]) =>
  [...new Set(linesOf(book, batch).map(({ lot }) => lot))]
    .filter((lot) => lots.includes(lot))
    .sort();

describe('trace against a brute-force walk of tokens', () => {
  it('finds every batch a lot went into, and no other', () => {
    fc.assert(
      fc.property(randomLedger, ({ tables, lots, lotsIn }) => {
        const book = bookOf(tables);
        for (const lot of lots) {
          const expected = [...lotsIn].filter(([, held]) => held.has(lot)).map(([batch]) => batch);
          expect(batchesOf(book, lot), lot).toEqual(expected.sort());
        }
      }),
      RUNS,
    );
  });

  it('finds every lot in a batch, and no other', () => {
    fc.assert(
      fc.property(randomLedger, ({ tables, lots, lotsIn }) => {
        const book = bookOf(tables);
        for (const [batch, held] of lotsIn) {
          expect(lotsOf(book, batch, lots), batch).toEqual([...held].sort());
        }
      }),
      RUNS,
    );
  });

  it('counts what each batch took straight from each lot', () => {
    fc.assert(
      fc.property(randomLedger, ({ tables, lots, taken }) => {
        const book = bookOf(tables);
        const found = new Map<string, number>();
        for (const lot of lots) {
          for (const line of linesOf(book, lot)) {
            if (line.lot === lot) found.set(`${line.batch} ${lot}`, line.quantity.toNumber());
          }
        }
        const expected = [...taken].filter(([key]) => !key.endsWith(' '));
        expect([...found].sort()).toEqual(expected.sort());
      }),
      RUNS,
    );
  });

  it('counts the bars of a recalled batch on the shelf and sold', () => {
    fc.assert(
      fc.property(randomLedger, ({ tables, lots, barsLeft, barsSold }) => {
        const book = bookOf(tables);
        for (const lot of lots) {
          for (const batch of sound(recallOf(book, lot, LATE)).batches) {
            expect(batch.barsOnHand.toNumber()).toBe(barsLeft.get(batch.batch) ?? 0);
            expect(batch.barsSold.toNumber()).toBe(barsSold.get(batch.batch) ?? 0);
          }
        }
      }),
      RUNS,
    );
  });

  it('leaves the same layers on every shelf as valuation does', () => {
    fc.assert(
      fc.property(randomLedger, ({ tables }) => {
        const book = bookOf(tables);
        for (const { moves } of indexOf(book).values()) {
          const item = moves[0]?.item;
          if (item === undefined) continue;
          const plain = (layers: ReturnType<typeof walkLayers>['remaining']) =>
            layers.map(({ lot, quantity }) => [lot, quantity.toString()]);
          expect(plain(walkLayers(book, item).remaining)).toEqual(
            plain(stockAt(book, item, LATE).shelf.filled),
          );
        }
      }),
      RUNS,
    );
  });

  it('does not depend on the order of rows, nor on the Valuation', () => {
    fc.assert(
      fc.property(randomLedger, fc.infiniteStream(fc.double({ noNaN: true })), (ledger, keys) => {
        const [headers = [], ...rows] = ledger.tables['Moves'] ?? [];
        const shuffled = rows
          .map((row) => ({ row, key: Number(keys.next().value) }))
          .sort((a, b) => a.key - b.key)
          .map(({ row }) => row);
        const other = withSetting(
          {
            Settings: table('Setting | Value'),
            ...ledger.tables,
            Moves: [headers, ...shuffled],
          },
          'Valuation',
          'Average',
        );
        const [book, again] = [bookOf(ledger.tables), bookOf(other)];
        for (const name of [...ledger.lots, ...ledger.lotsIn.keys()])
          expect(linesOf(again, name)).toEqual(linesOf(book, name));
      }),
      { numRuns: 60 },
    );
  });
});

/** L1 goes into B1; its leftover into B2; B2's spare tiles into B3; B4 has nothing of it. */
const chain: Tables = {
  Materials: table(
    'Material | Kind | Unit',
    ['Clear base', 'base', 'g'],
    ['Teal drops', 'colourant', 'g'],
    ['Box', 'packaging', 'each'],
  ),
  Lots: table(
    'Lot | Material | Received | Quantity | Paid | Supplier',
    ['L1', 'Clear base', '2024-01-01', 500, 5, 'Cove Supply'],
    ['L2', 'Clear base', '2024-01-02', 500, 5, 'Cove Supply'],
    ['D1', 'Teal drops', '2024-01-01', 50, 5, ''],
    ['X1', 'Box', '2024-01-01', 50, 5, ''],
  ),
  Molds: table('Mold | Makes | Cavities | Fill g', ['Tiles', 'tiles', 36, 25]),
  Colours: table(
    'Colour | Ingredient | Amount | Measure',
    ['Teal', 'Clear base', 9, 'g'],
    ['Teal', 'Teal drops', 1, 'g'],
    ['Clear tint', 'Clear base', 1, 'g'],
  ),
  Designs: table('Design', ['Tide Pool'], ['Plain']),
  Batches: table(
    'Batch | Poured | Design | Bars | Good | State',
    ['B1', '2024-02-01', 'Tide Pool', 12, 12, 'posted'],
    ['B2', '2024-02-02', 'Plain', 6, 6, 'posted'],
    ['B3', '2024-02-03', 'Tide Pool', 6, 5, 'posted'],
    ['B4', '2024-02-04', 'Plain', 6, 6, 'posted'],
  ),
  Moves: table(
    'Entry | When | Reason | Material | Quantity | Lot | Value | Batch | By | Note',
    ['B1.01', '2024-02-01', 'used', 'Clear base', -400, 'L1', '', 'B1', '', ''],
    ['B1.02', '2024-02-01', 'used', 'Teal drops', -10, 'D1', '', 'B1', '', ''],
    ['B1.03', '2024-02-01', 'used', 'Box', -12, 'X1', '', 'B1', '', ''],
    ['B1.04', '2024-02-01', 'left over', 'Clear tint leftover', 30, 'B1', '', 'B1', '', ''],
    ['B1.05', '2024-02-01', 'made', 'Tide Pool', 12, 'B1', '', 'B1', '', ''],
    ['B2.01', '2024-02-02', 'used', 'Clear tint leftover', -30, '', '', 'B2', '', ''],
    ['B2.02', '2024-02-02', 'spare', 'Clear tint × Tiles', 8, '', '', 'B2', '', ''],
    ['B2.03', '2024-02-02', 'made', 'Plain', 6, '', '', 'B2', '', ''],
    ['B3.01', '2024-02-03', 'used', 'Clear tint × Tiles', -8, 'B2', '', 'B3', '', ''],
    ['B3.02', '2024-02-03', 'made', 'Tide Pool', 5, 'B3', '', 'B3', '', ''],
    ['B4.01', '2024-02-04', 'used', 'Clear base', -200, 'L2', '', 'B4', '', ''],
    ['B4.02', '2024-02-04', 'made', 'Plain', 6, 'B4', '', 'B4', '', ''],
    ['S1', '2024-02-05', 'sold', 'Tide Pool', -7, '', '', '', '', 'Harbour Fair'],
    ['S2', '2024-02-06', 'sold', 'Tide Pool', -6, '', '', '', '', 'By post'],
    ['W1', '2024-02-06', 'wasted', 'Plain', -1, 'B2', '', '', '', ''],
  ),
};

describe('trace of a chain of batches', () => {
  const book = bookOf(chain);
  const short = (name: string) =>
    linesOf(book, name).map((line) => [
      line.batch,
      line.design,
      line.bars,
      line.item,
      line.lot,
      line.quantity.toNumber(),
    ]);

  it('follows a lot through leftovers and spares, a line for what carried it', () => {
    expect(short('l1')).toEqual([
      ['B1', 'Tide Pool', 12, 'Clear base', 'L1', 400],
      ['B2', 'Plain', 6, 'Clear tint leftover', 'B1', 30],
      ['B3', 'Tide Pool', 6, 'Clear tint × Tiles', 'B2', 8],
    ]);
  });

  it('follows a batch back to every lot', () => {
    expect(short('B3')).toEqual([
      ['B1', 'Tide Pool', 12, 'Box', 'X1', 12],
      ['B1', 'Tide Pool', 12, 'Clear base', 'L1', 400],
      ['B1', 'Tide Pool', 12, 'Teal drops', 'D1', 10],
      ['B2', 'Plain', 6, 'Clear tint leftover', 'B1', 30],
      ['B3', 'Tide Pool', 6, 'Clear tint × Tiles', 'B2', 8],
    ]);
  });

  it('answers a lot never used, and a batch that used nothing, with no lines', () => {
    const idle = bookOf(withRows(chain, 'Lots', ['L9', 'Clear base', '2024-03-01', 5, 5, '']));
    expect(linesOf(idle, 'L9')).toEqual([]);
  });

  it('answers a name that is both lot and batch both ways', () => {
    const both = bookOf(withRows(chain, 'Lots', ['B4', 'Teal drops', '2024-01-09', 5, 5, '']));
    const used = withRows(
      withRows(chain, 'Lots', ['B4', 'Teal drops', '2024-01-09', 5, 5, '']),
      'Moves',
      ['E9', '2024-03-01', 'used', 'Teal drops', -2, 'B4', '', 'B5'],
    );
    expect(linesOf(both, 'B4').map(({ lot }) => lot)).toEqual(['L2']);
    expect(linesOf(bookOf(used), 'B4').map(({ batch, lot }) => [batch, lot])).toEqual([
      ['B4', 'L2'],
      ['B5', 'B4'],
    ]);
  });

  it('shows a batch that has no line in Batches, by its moves', () => {
    const orphan = bookOf(
      withRows(chain, 'Moves', ['E9', '2024-03-01', 'used', 'Clear base', -5, 'L1', '', 'B7']),
    );
    expect(linesOf(orphan, 'L1').at(-1)).toMatchObject({
      batch: 'B7',
      design: '',
      bars: undefined,
    });
    expect(linesOf(orphan, 'B7').map(({ lot }) => lot)).toEqual(['L1']);
  });

  it('goes on through a leftover of a batch without a line, or one that only a count put there', () => {
    const orphan = bookOf(
      withRows(
        chain,
        'Moves',
        ['E7', '2024-03-01', 'used', 'Clear base', -5, 'L1', '', 'B7'],
        ['E8', '2024-03-01', 'left over', 'Teal leftover', 5, 'pot 7', '', 'B7'],
        ['E9', '2024-03-02', 'used', 'Teal leftover', -5, 'Pot 7', '', 'B8'],
      ),
    );
    expect(batchesOf(orphan, 'L1')).toEqual(['B1', 'B2', 'B3', 'B7', 'B8']);
    const counted = bookOf(
      withRows(
        chain,
        'Moves',
        ['E8', '2024-03-01', 'counted', 'Teal leftover', 5, 'b1', '', '', ''],
        ['E9', '2024-03-02', 'used', 'Teal leftover', -5, '', '', 'B4'],
      ),
    );
    expect(batchesOf(counted, 'L1')).toEqual(['B1', 'B2', 'B3', 'B4']);
  });

  it('takes what was used before it came from what comes next', () => {
    const early = bookOf(
      withRows(chain, 'Moves', ['E9', '2023-12-31', 'used', 'Teal drops', -5, '', '', 'B0']),
    );
    expect(linesOf(early, 'D1').map(({ batch, quantity }) => [batch, quantity.toNumber()])).toEqual(
      [
        ['B0', 5],
        ['B1', 10],
        // B1's leftover went on to B2, and B2's spares to B3.
        ['B2', 30],
        ['B3', 8],
      ],
    );
  });

  it('ends where two batches take each other’s leftovers', () => {
    const circle = bookOf(
      withRows(
        chain,
        'Moves',
        ['E8', '2024-03-01', 'left over', 'Teal leftover', 5, 'B3', '', 'B3'],
        ['E9', '2024-03-02', 'used', 'Teal leftover', -5, 'B3', '', 'B1'],
      ),
    );
    expect(batchesOf(circle, 'L1')).toEqual(['B1', 'B2', 'B3']);
    expect(lotsOf(circle, 'B1', ['L1', 'L2', 'D1', 'X1'])).toEqual(['D1', 'L1', 'X1']);
  });

  it.each([
    ['B33', /neither a lot in Lots nor a batch in Batches. Did you mean "B3"\?/],
    ['Tide Pool', /is a design, not a lot or a batch. Give one of its batches, such as B3\./],
    ['', /neither/],
    ['=HYPERLINK("x")', /neither/],
  ])('refuses %j', (name, sentence) => {
    expect(refusal(trace(book, name)).sentence).toMatch(sentence);
  });
});

describe('recallOf', () => {
  const book = bookOf(chain);
  const recall = sound(recallOf(book, 'L1', LATE));

  it('lists each batch with its bars on the shelf, sold and gone, oldest bars sold first', () => {
    expect(
      recall.batches.map((batch) => [
        batch.batch,
        batch.certainty,
        batch.barsMade.toNumber(),
        batch.barsOnHand.toNumber(),
        batch.barsSold.toNumber(),
        batch.barsGone.toNumber(),
      ]),
    ).toEqual([
      ['B1', 'direct', 12, 0, 12, 0],
      ['B2', 'by recipe', 6, 5, 0, 1],
      ['B3', 'by recipe', 5, 4, 1, 0],
    ]);
    expect(recall.batches[0]?.sales.map(({ bars, note }) => [bars.toNumber(), note])).toEqual([
      [7, 'Harbour Fair'],
      [5, 'By post'],
    ]);
    expect(recall.lotOnHand.toNumber()).toBe(100);
  });

  it('tells apart what is only possible: no Teal drops are in a Clear tint leftover', () => {
    const drops = sound(recallOf(book, 'D1', LATE));
    expect(drops.batches.map(({ batch, certainty }) => [batch, certainty])).toEqual([
      ['B1', 'direct'],
      ['B2', 'possible'],
      ['B3', 'possible'],
    ]);
  });

  it('lists soap of those batches on the shelf, and uses that nobody can place', () => {
    const more = sound(
      recallOf(
        bookOf(
          withRows(
            chain,
            'Moves',
            ['E1', '2024-03-01', 'left over', 'Teal leftover', 9, 'B1', '', 'B1'],
            ['E2', '2024-03-01', 'counted', 'Clear tint leftover', 7, '', '', ''],
            ['E3', '2024-03-02', 'used', 'Clear tint leftover', -7, '', '', 'B4'],
            ['E4', '2024-03-02', 'used', 'Clear base', -3, 'L1', '', ''],
          ),
        ),
        'L1',
        LATE,
      ),
    );
    expect(
      more.soapOnHand.map(({ item, batch, onHand }) => [item.name, batch, onHand.toNumber()]),
    ).toEqual([['Teal leftover', 'B1', 9]]);
    expect(more.doubtful.map(({ move }) => move.entry)).toEqual(['E3']);
    expect(more.usedWithoutBatch.toNumber()).toBe(3);
  });

  it('starts from a lot alone', () => {
    expect(refusal(recallOf(book, 'B1', LATE)).sentence).toMatch(/"B1" is a batch/);
  });
});
