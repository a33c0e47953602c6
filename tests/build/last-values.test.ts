import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { describeStarter } from '../../src/starter/file/describe-starter.ts';
import { placeKey } from '../../src/starter/file/work-out.ts';
import type { WorkbookImage } from '../../src/xlsx/image.ts';
import type { Cell } from '../../src/workbook/port.ts';
import { demoWorkbook } from '../../src/starter/starter-workbook.ts';
import { byExcelJs, byLibreOffice, imageOf, soffice } from '../xlsx/support.ts';
import { builtFile } from './built.ts';

/** Every cell of a sheet that is seen, by place: what it was worked out to be when the file was built. */
function workedOut(): Map<string, Cell> {
  return new Map(
    describeStarter(demoWorkbook(), 'any')
      .sheets.filter(({ hidden }) => hidden !== true)
      .flatMap(({ name, cells = [] }) =>
        cells.map(({ row, column, value }) => [placeKey(name, row, column), value] as const),
      ),
  );
}

const valuesIn = ({ sheets }: WorkbookImage): Map<string, Cell> =>
  new Map(
    sheets.flatMap(({ name, cells }) =>
      cells.map(({ row, column, value }) => [placeKey(name, row, column), value] as const),
    ),
  );

function expectSame(wanted: ReadonlyMap<string, Cell>, found: ReadonlyMap<string, unknown>): void {
  expect(wanted.size).toBeGreaterThan(5000);
  for (const [place, value] of wanted) {
    if (typeof value === 'number') expect(found.get(place), place).toBeCloseTo(value, 9);
    else expect(withoutLineEnds(found.get(place) ?? ''), place).toEqual(withoutLineEnds(value));
  }
}

/** LibreOffice leaves out the line ends that a text ends in. */
const withoutLineEnds = (value: unknown): unknown =>
  typeof value === 'string' ? value.replace(/\n+$/u, '') : value;

describe('the starter workbook opened by someone without the add-in', () => {
  let wanted: ReadonlyMap<string, Cell>;
  let file: Uint8Array;
  beforeAll(() => {
    wanted = workedOut();
    file = readFileSync(builtFile('dist/pour-ledger.xlsx'));
  });

  it.skipIf(soffice === undefined)('keeps every last value in LibreOffice, lists and all', () => {
    const saved = byLibreOffice(file, 'xlsx').get('book.xlsx');
    if (saved === undefined) throw new Error('LibreOffice wrote no workbook');
    expectSame(wanted, valuesIn(imageOf(saved)));
  });

  it('keeps every last value for another library', async () => {
    const found = new Map<string, unknown>();
    (await byExcelJs(file)).eachSheet((sheet) =>
      sheet.eachRow((row) =>
        row.eachCell((cell) => {
          const value: unknown = cell.formula === undefined ? cell.value : cell.result;
          found.set(placeKey(sheet.name, Number(cell.row) - 1, Number(cell.col) - 1), plain(value));
        }),
      ),
    );
    expectSame(wanted, found);
  });

  it('shows no cell error anywhere', () => {
    for (const [place, value] of wanted) expect(String(value), place).not.toMatch(/^#[A-Z]/u);
  });
});

/** exceljs gives dates as such; a cell holds a number. */
const plain = (value: unknown): unknown =>
  value instanceof Date ? value.getTime() / 86_400_000 + 25_569 : value;
