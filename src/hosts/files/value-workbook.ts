import type { ValueColumn, ValueSheet, ValueWorkbook } from '../../workbook/port.ts';
import type { NewSheet, NewStyle, NewWorkbook } from '../../xlsx/write/new-workbook.ts';

/** A workbook of values in the words of the xlsx writer. */
export const describeValues = ({ title, sheets }: ValueWorkbook): NewWorkbook => ({
  title,
  sheets: sheets.map(describeSheet),
});

function describeSheet({ name, lines, table, columns, rows }: ValueSheet): NewSheet {
  const row = lines.length === 0 ? 0 : lines.length + 1;
  return {
    name,
    frozenRows: row + 1,
    cells: lines.map((value, index) => ({
      row: index,
      column: 0,
      value,
      style: index === 0 ? { bold: true, fontSize: 14 } : {},
    })),
    tables: [
      {
        name: table,
        row,
        column: 0,
        columns: columns.map((column, index) => ({
          header: column.header,
          style: { numberFormat: formats[column.format] },
          width: widthOf(
            column,
            rows.map((cells) => cells[index] ?? ''),
          ),
        })),
        rows,
        headerStyle,
        tableStyle: 'TableStyleLight9',
      },
    ],
    print: { landscape: columns.length > 7, repeatRows: row + 1 },
  };
}

const headerStyle: NewStyle = { bold: true };

const formats: Readonly<Record<ValueColumn['format'], string>> = {
  // Text stays text when someone edits it.
  text: '@',
  number: '#,##0.###',
  whole: '#,##0',
  money: '#,##0.00',
  percent: '0.##',
  date: 'yyyy-mm-dd',
};

/** As wide as what it holds, within what a screen can show. */
function widthOf({ header, format }: ValueColumn, cells: readonly (string | number | boolean)[]) {
  if (format === 'date') return 12;
  const longest = cells.reduce<number>((most, cell) => Math.max(most, String(cell).length), 0);
  return Math.min(48, Math.max(header.length + 3, longest + 2, 8));
}
