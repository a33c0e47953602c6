import { beforeAll, describe, expect, it } from 'vitest';
import { asIfOn } from '../../functions/clock.ts';
import type { NewCell } from '../../src/xlsx/write/new-workbook.ts';
import { demoDay } from '../../src/starter/demo/season.ts';
import { type Built, build, variants } from './built.ts';
import { blanks } from '../support/three-blanks.ts';
import { CellError, readFormula, type Sheets, shownIn, type Value } from './formula-reader.ts';

/** Every cell that asks one of our functions, in each variant, worked out anew from its text. */
describe.each(variants)('our functions in the %s workbook', (name, make) => {
  let built: Built;
  let sheets: Sheets;
  let asked: { sheet: string; cell: NewCell }[];
  /** Cells without a formula, outside tables. */
  let typed: Set<string>;
  beforeAll(() => {
    built = build(make);
    asked = built.described.sheets.flatMap((sheet) =>
      (sheet.cells ?? [])
        .filter(({ formula }) => formula?.includes('POUR.'))
        .map((cell) => ({ sheet: sheet.name, cell })),
    );
    typed = new Set(
      built.described.sheets.flatMap(({ name: sheet, cells = [] }) =>
        cells
          .filter(({ formula }) => formula === undefined)
          .map(({ row, column }) => placeKey(sheet, row, column)),
      ),
    );
    const handle = asked.find(({ cell }) => cell.formula?.startsWith('=POUR.BOOK('))?.cell.value;
    sheets = shownIn(built.described, built.starter.tables, handle ?? '');
  });

  it.each(blanks)('answer what the file shows, cell by cell, with blank cells as %j', (blank) => {
    expect(asked.length).toBeGreaterThan(150);
    asIfOn(demoDay, () => {
      for (const { sheet, cell } of asked) {
        const value = shown(readFormula(cell.formula ?? '', sheet, sheets, blank));
        const where = whereIs(sheet, cell);
        if (typeof cell.value === 'number' && cell.spill === undefined) {
          expect(value, where).toBeCloseTo(cell.value, 9);
        } else expect(value, where).toEqual(cell.spill ?? cell.value);
      }
    });
  });

  it('answer alike, however a host hands over a cell that the maker empties', () => {
    let emptied = 0;
    const differing: string[] = [];
    asIfOn(demoDay, () => {
      for (const { sheet, cell } of asked) {
        for (const place of typedCellsOf(cell.formula ?? '', sheet)) {
          const without = { ...sheets, cell: otherThan(place) };
          const answers = blanks.map((blank) =>
            JSON.stringify(shown(readFormula(cell.formula ?? '', sheet, without, blank))),
          );
          if (new Set(answers).size > 1)
            differing.push(`${whereIs(sheet, cell)} without ${place}: ${answers.join(' or ')}`);
          emptied += 1;
        }
      }
    });
    expect(differing).toEqual([]);
    expect(emptied).toBeGreaterThan(100);
  });

  /** The cells with nothing but what a maker types that a formula looks at, as `Sheet!row,column`. */
  function typedCellsOf(formula: string, sheet: string): string[] {
    const places = new Set<string>();
    const watched: Sheets = {
      ...sheets,
      cell: (...place) => {
        if (typed.has(placeKey(...place))) places.add(placeKey(...place));
        return sheets.cell(...place);
      },
    };
    readFormula(formula, sheet, watched);
    return [...places];
  }

  const otherThan =
    (emptied: string): Sheets['cell'] =>
    (...place) =>
      placeKey(...place) === emptied ? null : sheets.cell(...place);

  it('are asked for by every family the workbook shows', () => {
    const ids = new Set(
      asked.flatMap(({ cell }) =>
        [...(cell.formula ?? '').matchAll(/POUR\.([A-Z]+)\(/gu)].map((match) => match[1]),
      ),
    );
    const families = [
      ...['BOOK', 'WEIGHOUT', 'TAKEOUT', 'CANMAKE', 'COSTPERBAR', 'COSTLINES', 'STOCKLIST'],
      ...['SERVICECHECK'],
      ...['PRICE', 'BREAKEVEN', 'FAIR', 'BATCHCOST', 'FORECAST', 'SUPPLIES', 'CALENDAR'],
      ...['CASHBYWEEK', 'PLANNOTES', 'TODAY'],
      ...['ONHAND', 'UNITCOST', 'BASEPERMOLD', 'INGREDIENTS', 'CHECKS', 'TRACE', 'TILECOUNT'],
    ];
    for (const family of families) expect(ids, `${name}: ${family}`).toContain(family);
  });
});

const placeKey = (sheet: string, row: number, column: number): string =>
  `${sheet}!${String(row)},${String(column)}`;

const whereIs = (sheet: string, { row, column, formula = '' }: NewCell): string =>
  `${placeKey(sheet, row, column)} ${formula}`;

/** A cell that repeats a blank one shows 0; an error is its code. */
const shown = (value: Value) => (value instanceof CellError ? value.code : (value ?? 0));
