import { describe, expect, it } from 'vitest';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { ranges, type Tables, withRows, workshop } from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));

/** A1 takes C1 and leaves Slate; A2 takes the leftover without naming its batch. */
const poured: Tables = withRows(
  withRows(
    workshop,
    'Batches',
    ['A1', '2024-03-01', 'Tide Pool', 12, 11, 1, '', '', '', '', 'posted'],
    ['A2', '2024-03-08', 'Plain Bar', 6, 6, 0, '', '', '', '', 'posted'],
  ),
  'LedgerLines',
  ['A1.01', '2024-03-01', 'used', 'Clear base', -900, 'C1', -7, 'A1'],
  ['A1.02', '2024-03-01', 'used', 'Box', -11, 'B1', -4.4, 'A1'],
  ['A1.03', '2024-03-01', 'left over', 'Slate leftover', 25.5, 'A1', 1, 'A1'],
  ['A1.04', '2024-03-01', 'made', 'Tide Pool', 11, 'A1', 10.4, 'A1'],
  ['A2.01', '2024-03-08', 'used', 'Slate leftover', -20.5, '', -1, 'A2'],
  ['A2.02', '2024-03-08', 'used', 'White base', -280, 'W1', -2, 'A2'],
);

const HEADER = ['Batch', 'Poured', 'Design', 'Bars', 'Item', 'Lot', 'Quantity'];

describe('TRACE', () => {
  it('follows a lot to every batch, through leftovers', () => {
    expect(call('TRACE', 'c1', bookOf(poured))).toEqual([
      HEADER,
      ['A1', '2024-03-01', 'Tide Pool', 12, 'Clear base', 'C1', 900],
      ['A2', '2024-03-08', 'Plain Bar', 6, 'Slate leftover', 'A1', 20.5],
    ]);
  });

  it('follows a batch back to every lot, through leftovers', () => {
    expect(call('TRACE', ' A2 ', bookOf(poured))).toEqual([
      HEADER,
      ['A1', '2024-03-01', 'Tide Pool', 12, 'Box', 'B1', 11],
      ['A1', '2024-03-01', 'Tide Pool', 12, 'Clear base', 'C1', 900],
      ['A2', '2024-03-08', 'Plain Bar', 6, 'Slate leftover', 'A1', 20.5],
      ['A2', '2024-03-08', 'Plain Bar', 6, 'White base', 'W1', 280],
    ]);
  });

  it('does not count a batch that was undone', () => {
    const undone = withRows(
      poured,
      'LedgerLines',
      ['A2.01.R', '2024-03-09', 'reversed', 'Slate leftover', 20.5, '', 1, 'A2', '', 'A2.01'],
      ['A2.02.R', '2024-03-09', 'reversed', 'White base', 280, 'W1', 2, 'A2', '', 'A2.02'],
    );
    expect(call('TRACE', 'C1', bookOf(undone))).toHaveLength(2);
    expect(call('TRACE', 'A2', bookOf(undone))).toEqual([HEADER]);
  });

  it('answers a lot never used with its header alone', () => {
    expect(call('TRACE', 'G1', bookOf(poured))).toEqual([HEADER]);
  });

  it.each([
    ['a slip', 'A22', /neither a lot in Lots nor a batch in Batches\. Did you mean "A2"\?/],
    ['a design', 'Plain Bar', /is a design.*such as A2/],
    ['nothing', '', /lot or batch is blank/],
  ])('refuses %s', (_, name, sentence) => {
    const { code, message } = errorOf(() => call('TRACE', name, bookOf(poured)));
    expect(code).toBe('#VALUE!');
    expect(message).toMatch(sentence);
  });
});

describe('RECALL', () => {
  const sold: Tables = withRows(poured, 'LedgerLines', [
    ...['S1', '2024-03-09', 'sold', 'Tide Pool', -4, '', -3.8, '', '', 'Harbour Fair'],
  ]);

  it('says where a lot is: its rest, the batches with their bars, and soap on the shelf', () => {
    expect(call('RECALL', 'C1', bookOf(sold), '2024-03-10')).toEqual([
      ['Item', 'Batch', 'Poured', 'How sure', 'Made', 'On hand', 'Sold', 'Gone'],
      ['Clear base', '', '', 'direct', 2000, 1100, '', 0],
      ['Tide Pool', 'A1', '2024-03-01', 'direct', 11, 7, 4, 0],
      ['Plain Bar', 'A2', '2024-03-08', 'by recipe', 0, 0, 0, 0],
      ['Slate leftover', 'A1', '', 'by recipe', '', 5, '', ''],
    ]);
  });

  it('counts what was there at the end of the day asked for', () => {
    expect(call('RECALL', 'C1', bookOf(sold), '2024-03-08')).toContainEqual([
      ...['Tide Pool', 'A1', '2024-03-01', 'direct', 11, 11, 0, 0],
    ]);
  });

  it('says the same of a batch; a name that is a lot too is answered both ways', () => {
    expect(call('RECALL', 'A1', bookOf(sold), '2024-03-10')).toEqual([
      ['Item', 'Batch', 'Poured', 'How sure', 'Made', 'On hand', 'Sold', 'Gone'],
      ['Alcohol', '', '', 'direct', 500, 500, '', 0],
      ['Tide Pool', 'A1', '2024-03-01', 'direct', 11, 7, 4, 0],
      ['Plain Bar', 'A2', '2024-03-08', 'direct', 0, 0, 0, 0],
      ['Slate leftover', 'A1', '', 'direct', '', 5, '', ''],
    ]);
  });

  it.each([
    ['a design', 'Plain Bar', /is a design/],
    ['a slip', 'C11', /Did you mean "C1"\?/],
  ])('refuses %s', (_, name, sentence) => {
    const { code, message } = errorOf(() => call('RECALL', name, bookOf(sold)));
    expect(code).toBe('#VALUE!');
    expect(message).toMatch(sentence);
  });
});
