import type { Cell } from '../../workbook/port.ts';
import { rangeName, sheetPrefix } from '../address.ts';
import type { ChartCells } from './new-chart.ts';
import type { NewWorkbook } from './new-workbook.ts';
import { sheetGrid } from './sheet-grid.ts';
import { escapeXml } from '../xml/xml-text.ts';

/** A chart's reference to cells, with what they hold now. */
export function chartCellsXml(book: NewWorkbook, cells: ChartCells, as: 'text' | 'number'): string {
  const absolute = rangeName(cells.range).replace(/([A-Z]+)(\d+)/g, '$$$1$$$2');
  const formula = `<c:f>${escapeXml(`${sheetPrefix(cells.sheet)}${absolute}`)}</c:f>`;
  const values = valuesOf(book, cells);
  const points = values.flatMap((value, index) => {
    const shown = as === 'text' ? String(value) : value;
    if (shown === '' || (as === 'number' && typeof shown !== 'number')) return [];
    return [`<c:pt idx="${index}"><c:v>${escapeXml(String(shown))}</c:v></c:pt>`];
  });
  const cache = `<c:ptCount val="${values.length}"/>${points.join('')}`;
  return as === 'text'
    ? `<c:strRef>${formula}<c:strCache>${cache}</c:strCache></c:strRef>`
    : `<c:numRef>${formula}<c:numCache><c:formatCode>General</c:formatCode>${cache}</c:numCache></c:numRef>`;
}

function valuesOf(book: NewWorkbook, { sheet: name, range }: ChartCells): readonly Cell[] {
  const sheet = book.sheets.find((each) => each.name === name);
  if (!sheet) throw new Error(`A chart speaks of the sheet "${name}", which is not there`);
  if (range.startRow !== range.endRow && range.startColumn !== range.endColumn) {
    throw new Error(`A chart series takes one row or one column, not ${rangeName(range)}`);
  }
  const grid = sheetGrid(sheet);
  const values: Cell[] = [];
  for (let row = range.startRow; row <= range.endRow; row += 1) {
    for (let column = range.startColumn; column <= range.endColumn; column += 1) {
      values.push(grid.at(row, column)?.value ?? '');
    }
  }
  return values;
}
