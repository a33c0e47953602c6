import { beforeAll, describe, expect, it } from 'vitest';
import { functionAnswersSheet } from '../../src/starter/cells/names.ts';
import { type Built, build, variants } from './built.ts';

/** A host hands the book's handle over, and waits, once for each of these; some 2,800 once did. */
const MOST_CALLS = 200;

describe.each(variants)('the formulas of the %s workbook', (_name, make) => {
  let formulas: { sheet: string; text: string }[];
  let built: Built;
  beforeAll(() => {
    built = build(make);
    formulas = built.described.sheets.flatMap(({ name, cells = [] }) =>
      cells.flatMap(({ formula }) =>
        formula === undefined ? [] : [{ sheet: name, text: formula }],
      ),
    );
  });

  it('ask our functions in few cells', () => {
    const asking = formulas.filter(({ text }) => text.includes('POUR.'));
    expect(asking.length).toBeGreaterThan(100);
    expect(asking.length).toBeLessThanOrEqual(MOST_CALLS);
  });

  it('ask for a list only on the hidden sheet, and for each once', () => {
    const lists =
      /POUR\.(?:MELTSHEET|MATERIALS|STOCKLIST|SERVICECHECK|COSTLINES|FORECAST|FORECASTFIT|SUPPLIES|CASHBYWEEK|PLANNOTES|CALENDAR|FAIR|BATCHCOST|CHECKS|TRACE|RECALL|WEIGHOUT|TAKEOUT|TILECOUNT)\(/u;
    const asking = formulas.filter(({ text }) => lists.test(text));
    expect([...new Set(asking.map(({ sheet }) => sheet))]).toEqual([functionAnswersSheet]);
    expect(new Set(asking.map(({ text }) => text)).size).toBe(asking.length);
    const hidden = built.described.sheets.find(({ name }) => name === functionAnswersSheet);
    expect(hidden?.hidden).toBe(true);
    for (const { row, column, spill = [] } of hidden?.cells ?? []) {
      if (spill.length > 0) expect(row, String(column)).toBe(3);
    }
  });

  it('never change by themselves as a file is opened', () => {
    const volatile = /(?<![A-Z.])(?:TODAY|NOW|RAND|RANDBETWEEN|OFFSET|INDIRECT|CELL|INFO)\(/u;
    expect(formulas.filter(({ text }) => volatile.test(text))).toEqual([]);
    expect(JSON.stringify(built.described.sheets.map(({ cells }) => cells))).not.toContain(
      '=TODAY()',
    );
  });
});
