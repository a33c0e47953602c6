import { beforeAll, describe, expect, it } from 'vitest';
import { sheetGrid } from '../../src/xlsx/write/sheet-grid.ts';
import { partsOf, partText } from '../xlsx/support.ts';
import { type Built, build, variants } from './built.ts';

const titles = [
  "Where a bar's cost goes",
  'Cost of one bar by batch size',
  'Price against bars to break even',
  'Takings and profit by fair',
  'A year of stock with the point of the usual formula',
  'A year of stock with the point of your own days',
  'Money for supplies by week',
  'Bars sold by month, and the forecast',
];

describe.each(variants)('charts of the %s workbook', (name, make) => {
  let built: Built;
  let charts: readonly string[];
  beforeAll(() => {
    built = build(make);
    charts = [...partsOf(built.bytes).keys()]
      .filter((part) => /charts\/chart\d+\.xml$/u.test(part))
      .map((part) => partText(built.bytes, part));
  });

  it('stand in the file as native charts', () => {
    const found = charts.map(
      (xml) => /<c:title>.*?<a:t>(.*?)<\/a:t>/u.exec(xml)?.[1]?.replaceAll('&apos;', "'") ?? '',
    );
    expect([...found].sort()).toEqual([...titles].sort());
  });

  it('draw from plain cells or cells of one value, and hold what these show', () => {
    for (const xml of charts) {
      const drawn = [
        ...xml.matchAll(
          /<c:f>(.*?)<\/c:f>.*?<c:ptCount val="(\d+)"\/>(.*?)<\/c:(?:num|str)Cache>/gu,
        ),
      ];
      expect(drawn.length).toBeGreaterThan(0);
      for (const [, reference = '', count, points = ''] of drawn) {
        const cells = cellsOf(built, reference);
        expect(cells.length, reference).toBe(Number(count));
        for (const [, index, shown] of points.matchAll(/idx="(\d+)"><c:v>(.*?)<\/c:v>/gu)) {
          expect(String(cells[Number(index)]?.value), reference).toBe(shown);
        }
        for (const cell of cells) {
          expect(cell?.computed ?? false, `${reference} is part of a spill`).toBe(false);
          expect(cell?.spill, reference).toBeUndefined();
        }
      }
      if (name === 'demo') expect(xml).toMatch(/<c:numCache>.*<c:pt /u);
    }
  });
});

/** The cells of a reference such as 'Fair results'!$A$7:$A$18. */
function cellsOf({ described }: Built, reference: string) {
  const [, sheet = '', from = '', to = ''] =
    /^'?(.*?)'?!\$([A-Z]+\$\d+):\$([A-Z]+\$\d+)$/u.exec(reference.replaceAll('&apos;', "'")) ?? [];
  const found = described.sheets.find(({ name }) => name === sheet);
  if (found === undefined) throw new Error(`no sheet for ${reference}`);
  const grid = sheetGrid(found);
  const [first, last] = [placeOf(from), placeOf(to)];
  const cells = [];
  for (let row = first.row; row <= last.row; row += 1) {
    for (let column = first.column; column <= last.column; column += 1)
      cells.push(grid.at(row, column));
  }
  return cells;
}

function placeOf(text: string): { row: number; column: number } {
  const [letters = '', digits = ''] = text.split('$');
  const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return { row: Number(digits) - 1, column };
}
