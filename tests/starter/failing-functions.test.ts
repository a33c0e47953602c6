import { beforeAll, describe, expect, it } from 'vitest';
import { placeKey } from '../../src/starter/file/work-out.ts';
import type { NewCell, NewWorkbook } from '../../src/xlsx/write/new-workbook.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import type { Cell } from '../../src/workbook/port.ts';
import { demoWorkbook } from '../../src/starter/starter-workbook.ts';
import { calculatedAnew, imageOf, soffice } from '../xlsx/support.ts';
import { build } from './built.ts';
import { restingOnFunctions } from './resting-on-functions.ts';

/**
 * The demo worked out anew where every function of ours fails: once as LibreOffice does it, which puts the
 * error in each cell of a spilled list, and once as Excel does it, which leaves only the list's first cell.
 */
const hosts: readonly (readonly [string, (book: NewWorkbook) => NewWorkbook])[] = [
  ['in each cell of a list', (book) => book],
  ['in the first cell of a list', withErrorsInHeads],
];

describe.skipIf(soffice === undefined).each(hosts)('functions that fail %s', (_where, as) => {
  const { described, starter } = build(withoutDays);
  const values = new Map<string, Cell>();
  beforeAll(() => {
    for (const { name, cells } of imageOf(calculatedAnew(writeWorkbook(as(described)))).sheets)
      for (const { row, column, value } of cells) values.set(placeKey(name, row, column), value);
  });

  const shown = (sheet: string, { row, column }: NewCell): Cell =>
    values.get(placeKey(sheet, row, column)) ?? '';

  it('leave no number, no sentence and no lonely blank in any cell that rests on them', () => {
    const resting = restingOnFunctions(described);
    expect(resting.length).toBeGreaterThan(1500);
    const figures = new Set(
      starter.sheets.flatMap(({ name, cells }) =>
        cells
          .filter(({ look }) => ['answer', 'total', 'headline', 'wrapped'].includes(look.role))
          .map(({ row, column }) => placeKey(name, row, column)),
      ),
    );
    const failed = new Set<string>();
    const misleading = resting
      .sort((a, b) => a.cell.row - b.cell.row || a.cell.column - b.cell.column)
      .flatMap(({ sheet, cell }) => {
        const value = shown(sheet, cell);
        const [below, beside] = [
          `${sheet} column ${String(cell.column)}`,
          `${sheet} row ${String(cell.row)}`,
        ];
        const isFigure = figures.has(placeKey(sheet, cell.row, cell.column));
        // The first cell of a list says that it failed; those beside and below it may be blank. A figure may not.
        const isExcused = value === '' && !isFigure && (failed.has(below) || failed.has(beside));
        if (isError(value) || isExcused) {
          failed.add(below).add(beside);
          return [];
        }
        if (value === '' && cell.value === '') return [];
        return [
          `${sheet} ${String(cell.row + 1)},${String(cell.column + 1)}: ${JSON.stringify(value)} where ${JSON.stringify(cell.value)} was right`,
        ];
      });
    expect(misleading).toEqual([]);
  });
});

const isError = (value: Cell): boolean => /^#(N\/A|NAME\?|VALUE!|REF!)$/u.test(String(value));

/** With a day filled in, much rests on that day and not on the functions' own today. */
function withoutDays() {
  const starter = demoWorkbook();
  return {
    ...starter,
    sheets: starter.sheets.map((sheet) => ({
      ...sheet,
      cells: sheet.cells.map((cell) =>
        cell.look.role === 'input' && cell.look.format === 'date' && sheet.name !== 'Forecast'
          ? { ...cell, holds: '' }
          : cell,
      ),
    })),
  };
}

function withErrorsInHeads(book: NewWorkbook): NewWorkbook {
  return {
    ...book,
    sheets: book.sheets.map((sheet) => ({
      ...sheet,
      cells: (sheet.cells ?? []).map((cell) => {
        if (cell.formula === undefined) return cell;
        const { row, column, value, formula } = cell;
        return { row, column, value, formula: withErrors(formula) };
      }),
    })),
  };
}

/** Each call of ours as #N/A. */
function withErrors(formula: string): string {
  const start = formula.search(/POUR\.[A-Z]+\(/u);
  if (start < 0) return formula;
  let end = formula.indexOf('(', start) + 1;
  for (let depth = 1; depth > 0; end += 1) {
    if (formula[end] === '(') depth += 1;
    if (formula[end] === ')') depth -= 1;
  }
  return withErrors(`${formula.slice(0, start)}NA()${formula.slice(end)}`);
}
