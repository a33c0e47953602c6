import { describe, expect, it } from 'vitest';
import { column, errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { ranges, type Tables, withCell, withRows, workshop } from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));
const from = '2024-11-01';

/** Plain bars of 50 g of white base by 5 December 2024; 2000 g are on hand. */
const plain = withCell(
  withCell(workshop, 'Plan', 1, 'Design', 'Plain Bar'),
  'Plan',
  1,
  'Bars',
  141,
);

const bare = withCell(
  withRows(workshop, 'Designs', ['Empty Bar', '', '', '', '', '', '', '']),
  'Plan',
  1,
  'Design',
  'Empty Bar',
);

describe('what a season is not to be planned from', () => {
  it.each([
    ['Plan', 'Ready by', 'soon', 'is "soon", which is not a date. Type it like 2026-11-25.'],
    ['Plan', 'Ready by', '', 'is blank. Fill it in.'],
    ['Plan', 'Bars', -3, 'is -3. Type more than 0.'],
    ['Plan', 'Bars', 'many', 'is "many", which is not a number. Type a plain number.'],
    [
      'Plan',
      'Design',
      'Tide Pol',
      'is "Tide Pol", which is not a design in Designs. Did you mean "Tide Pool"?',
    ],
    ['Materials', 'Lead days', -6, 'is -6. Type 0 or more.'],
    [
      'Materials',
      'Lead days',
      'a week',
      'is "a week", which is not a number. Type a plain number.',
    ],
  ])('%s, %s %j: BOOK says where and what', (table, header, cell, sentence) => {
    const error = errorOf(() => bookOf(withCell(workshop, table, 1, header, cell)));
    expect(error.code).toBe('#VALUE!');
    expect(error.message).toBe(`${table}, row 1, ${header} ${sentence}`);
  });

  it.each([
    [
      'SUPPLIES',
      /Plan line P1: .*Empty Bar has no lines in Layers\. Add what one bar is made of\./u,
    ],
    ['CASHBYWEEK', /Plan line P1: .*Empty Bar has no lines in Layers/u],
  ])('%s: a design without a recipe', (id, sentence) => {
    const error = errorOf(() => call(id, bookOf(bare), from));
    expect(error.code).toBe('#VALUE!');
    expect(error.message).toMatch(sentence);
  });

  it('calendar and notes go on with the other lines', () => {
    const sentence =
      "Plan line P1 can't be planned: Empty Bar has no lines in Layers. Add what one bar is made of.";
    expect(column(call('CALENDAR', bookOf(bare), from), 'Task')[0]).toBe(sentence);
    expect(column(call('PLANNOTES', bookOf(bare), from), 'Note')[0]).toBe(sentence);
  });
});

describe('a lead time of nothing', () => {
  const atOnce = withCell(plain, 'Materials', 2, 'Lead days', 0);

  it('leaves the buffer days', () => {
    // 3 days before 5 December.
    expect(column(call('SUPPLIES', bookOf(atOnce), from), 'Order by')).toEqual(['2024-12-02']);
  });

  it('has a reorder point of nothing, and the check says what a day takes', () => {
    const used = withRows(
      atOnce,
      'LedgerLines',
      ...[24, 26, 28, 30].map((day) => [
        `E${String(day)}`,
        `2024-10-${String(day)}`,
        'used',
        'White base',
        -100,
        '',
        '',
        '',
        '',
        '',
      ]),
    );
    expect(call('REORDERPOINT', 'White base', bookOf(used), '2024-10-31')).toBe(0);
    const check = call('SERVICECHECK', 'White base', bookOf(used), '2024-10-31') as unknown[][];
    expect(check[2]?.[1]).toBe(0);
    expect(check[2]?.[2]).toBeGreaterThan(0);
    expect(check[6]?.[1]).toMatch(/^With 0 g, .* Trust \d+ g, which lasted in \d+ of 100\.$/u);
  });
});
