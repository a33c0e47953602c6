import { beforeAll, describe, expect, it } from 'vitest';
import { barCost } from '../../src/domain/cost/bar-cost.ts';
import { findDesign } from '../../src/domain/book/find.ts';
import type { Result } from '../../src/domain/kernel/result.ts';
import { readBook, recogniseTables } from '../../src/workbook/read/read-book.ts';
import { demoDay } from '../../src/starter/demo/season.ts';
import { demoWorkbook } from '../../src/starter/starter-workbook.ts';
import { type Built, build } from './built.ts';

const INPUTS = {
  design: 4,
  bars: 5,
  moreBars: 6,
  pricesUp: 7,
  lateDays: 8,
  lostFills: 9,
  mold: 10,
};
type Supposed = Partial<Record<keyof typeof INPUTS, string | number>>;
const NOTHING: Supposed = { moreBars: 0, pricesUp: 0, lateDays: 0, lostFills: 0 };

/** The demo with other cells filled in on What if. */
function supposing(supposed: Supposed): Built {
  const cells = new Map(Object.entries(supposed).map(([name, holds]) => [nameRow(name), holds]));
  return build(() => {
    const starter = demoWorkbook();
    return {
      ...starter,
      sheets: starter.sheets.map((sheet) =>
        sheet.name === 'What if'
          ? {
              ...sheet,
              cells: sheet.cells.map((cell) =>
                cell.look.role === 'input' && cells.has(cell.row)
                  ? { ...cell, holds: cells.get(cell.row) ?? '' }
                  : cell,
              ),
            }
          : sheet,
      ),
    };
  });
}

const nameRow = (name: string): number => INPUTS[name as keyof typeof INPUTS];

/** A line of the sheet by its label: as it is, what if, and the difference. */
function line({ described }: Built, label: string): number[] {
  const cells = described.sheets.find(({ name }) => name === 'What if')?.cells ?? [];
  const row = cells.find(({ column, value }) => column === 0 && value === label)?.row;
  return [1, 2, 3].map((column) =>
    Number(cells.find((cell) => cell.row === row && cell.column === column)?.value),
  );
}

const SEASON = [
  'Bars planned',
  'Money for supplies',
  'First day to order',
  'Orders already late',
  'Minutes of work that find a day',
  'Bars that find no day',
];

describe('What if', () => {
  let [still, more, dearer] = [] as unknown as [Built, Built, Built];
  beforeAll(() => {
    still = supposing(NOTHING);
    more = supposing({ ...NOTHING, moreBars: 6, bars: 10, lostFills: 2 });
    dearer = supposing({ ...NOTHING, pricesUp: 10, lateDays: 7 });
  });

  it.each(['Cost of one bar', ...SEASON])(
    'moves nothing of %s where nothing is supposed',
    (label) => {
      const [now, then, difference] = line(still, label);
      expect(Number.isFinite(now)).toBe(true);
      expect(then).toBe(now);
      expect(difference).toBe(0);
    },
  );

  it('costs a bar of the larger batch as the domain does', () => {
    const { book, design } = demo(more);
    const [now, then] = line(more, 'Cost of one bar');
    expect(now).toBeCloseTo(Number(sound(barCost(book, design, 10, demoDay)).perBar), 9);
    expect(then).toBeCloseTo(Number(sound(barCost(book, design, 16, demoDay)).perBar), 9);
    expect(then).toBeLessThan(Number(now));
  });

  it('plans so many bars more in each line, with the money and the minutes that they take', () => {
    const lines = demo(more).book.plan.length;
    expect(line(more, 'Bars planned')[2]).toBe(6 * lines);
    for (const label of ['Money for supplies', 'Minutes of work that find a day'])
      expect(line(more, label)[2], label).toBeGreaterThan(0);
  });

  it('melts the base of lost fills again', () => {
    const { book } = demo(more);
    const name = inputOf(more, INPUTS.mold);
    const mold = [...book.molds.values()].find((each) => each.name === name);
    expect(line(more, 'Lost fills: base to melt again, g')[1]).toBeCloseTo(
      2 * Number(mold?.fillG.plus(mold.scrapeG)),
      9,
    );
  });

  it('makes supplies dearer, and the material of a bar with them', () => {
    const [now = 0, then] = line(dearer, 'Money for supplies');
    expect(then).toBeCloseTo(now * 1.1, 9);
    const { book, design } = demo(dearer);
    const { lines } = sound(barCost(book, design, 12, demoDay));
    const material = lines
      .filter(({ kind }) => kind === 'material')
      .reduce((sum, { perBar }) => sum + Number(perBar), 0);
    expect(material).toBeGreaterThan(0);
    // One bar in so many is lost, and what went into it is paid for by the good ones.
    const started = Math.ceil(12 / Number(design.yieldShare));
    expect(started).toBeGreaterThan(12);
    expect(line(dearer, 'Cost of one bar')[2]).toBeCloseTo(((material / 10) * started) / 12, 9);
  });

  it('moves every day to order ahead by the days that suppliers are late', () => {
    expect(line(dearer, 'First day to order')[2]).toBe(-7);
    expect(line(dearer, 'Orders already late')[2]).toBeGreaterThanOrEqual(0);
  });

  it('leaves every table as it is', () => {
    for (const built of [more, dearer]) expect(built.starter.tables).toEqual(still.starter.tables);
  });
});

function inputOf({ described }: Built, row: number): unknown {
  const cells = described.sheets.find(({ name }) => name === 'What if')?.cells ?? [];
  return cells.find((cell) => cell.row === row && cell.column === 1)?.value;
}

function demo(built: Built) {
  const tables = built.starter.tables.map(({ headers, rows }) => [headers, ...rows]);
  const book = sound(readBook(sound(recogniseTables(tables))));
  return { book, design: sound(findDesign(book, String(inputOf(built, INPUTS.design)))) };
}

function sound<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.failure.sentence);
  return result.value;
}
