import { describe, expect, it } from 'vitest';
import { trace } from '../../../src/domain/trace/trace.ts';
import { withRows } from '../../support/small-book.ts';
import { bookOf, refusal } from '../label/label-book.ts';
import { batchesOf, linesOf, lotsOf } from './ask.ts';
import { chain } from './chain.ts';

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
      'LedgerLines',
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
      withRows(chain, 'LedgerLines', [
        'E9',
        '2024-03-01',
        'used',
        'Clear base',
        -5,
        'L1',
        '',
        'B7',
      ]),
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
        'LedgerLines',
        ['E7', '2024-03-01', 'used', 'Clear base', -5, 'L1', '', 'B7'],
        ['E8', '2024-03-01', 'left over', 'Teal leftover', 5, 'pot 7', '', 'B7'],
        ['E9', '2024-03-02', 'used', 'Teal leftover', -5, 'Pot 7', '', 'B8'],
      ),
    );
    expect(batchesOf(orphan, 'L1')).toEqual(['B1', 'B2', 'B3', 'B7', 'B8']);
    const counted = bookOf(
      withRows(
        chain,
        'LedgerLines',
        ['E8', '2024-03-01', 'counted', 'Teal leftover', 5, 'b1', '', '', ''],
        ['E9', '2024-03-02', 'used', 'Teal leftover', -5, '', '', 'B4'],
      ),
    );
    expect(batchesOf(counted, 'L1')).toEqual(['B1', 'B2', 'B3', 'B4']);
  });

  it('takes what was used before it came from what comes next', () => {
    const early = bookOf(
      withRows(chain, 'LedgerLines', ['E9', '2023-12-31', 'used', 'Teal drops', -5, '', '', 'B0']),
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
        'LedgerLines',
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
