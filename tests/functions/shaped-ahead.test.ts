import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/workbook/port.ts';
import { ranges, withRows, workshop } from '../support/small-book.ts';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';

const call = await loadFunctions();

/** The workshop with a batch S1 of this design and so many bars, which shaped 36 tiles out of 25 g. */
const bookOf = (design: Cell, bars: Cell): unknown =>
  call(
    'BOOK',
    ...ranges(
      withRows(
        withRows(workshop, 'Batches', [
          'S1',
          '2024-02-20',
          design,
          bars,
          '',
          '',
          '',
          '',
          '',
          '',
          '',
          '',
          '',
        ]),
        'LedgerLines',
        ['S1.01', '2024-02-20', 'used', 'Clear base', -25, 'C1', -0.2, 'S1', '', ''],
        ['S1.02', '2024-02-20', 'spare', 'Clear base × Tiles', 36, 'S1', 0.2, 'S1', '', ''],
      ),
    ),
  );

describe('a batch with no design and 0 bars', () => {
  it.each([0, ''])('shaped pieces ahead, its Bars %j', (bars) => {
    const book = bookOf('', bars);
    expect(call('ONHAND', 'Clear base × Tiles', book)).toBe(36);
    expect(call('UNITCOST', 'Clear base × Tiles', book)).toBeCloseTo(0.2 / 36, 12);
    expect(call('TRACE', 'S1', book)).toEqual([
      ['Batch', 'Poured', 'Design', 'Bars', 'Item', 'Lot', 'Quantity'],
      ['S1', '2024-02-20', '', 0, 'Clear base', 'C1', 25],
    ]);
  });

  it.each([
    [
      '',
      3,
      /Batches.*Design is blank\. Fill it in; or where pieces were shaped ahead, type 0 under Bars/,
    ],
    ['Tide Pool', 0, /Batches.*Bars is blank or 0\. Fill it in/],
    ['Tide Pool', '', /Batches.*Bars is blank or 0\. Fill it in/],
    ['', -1, /Batches.*Bars is -1/],
  ])('design %j and bars %j are asked back', (design, bars, says) => {
    expect(errorOf(() => bookOf(design, bars)).message).toMatch(says);
  });

  it('has no plan to be held against', () => {
    const { code, message } = errorOf(() => call('BATCHCOST', 'S1', bookOf('', 0)));
    expect([code, message]).toEqual([
      '#N/A',
      'Batch S1 shaped pieces ahead, of no design, so there is no plan to hold it against.',
    ]);
  });
});
