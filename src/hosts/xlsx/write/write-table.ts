import { rangeName } from '../address.ts';
import { storedFormula } from '../formula/formula-text.ts';
import { DECLARATION, MAIN } from '../parts/namespaces.ts';
import type { NewTable } from './new-workbook.ts';
import { bodyRowCount } from './sheet-grid.ts';
import { escapeXml, storeText } from '../xml/xml-text.ts';

/** One table part; `id` is unique in the workbook. */
export function tableXml(table: NewTable, id: number): string {
  const ref = rangeName({
    startRow: table.row,
    startColumn: table.column,
    endRow: table.row + bodyRowCount(table),
    endColumn: table.column + table.columns.length - 1,
  });
  const columns = table.columns.map(({ header }, index) => {
    const attributes = `id="${index + 1}" name="${storeText(header)}"`;
    const formula = commonFormula(table, index);
    return formula === undefined
      ? `<tableColumn ${attributes}/>`
      : `<tableColumn ${attributes}><calculatedColumnFormula>${escapeXml(formula)}</calculatedColumnFormula></tableColumn>`;
  });
  return (
    `${DECLARATION}<table xmlns="${MAIN}" id="${id}" name="${table.name}" displayName="${table.name}" ref="${ref}" totalsRowShown="0">` +
    `${table.filter === false ? '' : `<autoFilter ref="${ref}"/>`}` +
    `<tableColumns count="${columns.length}">${columns.join('')}</tableColumns>` +
    `<tableStyleInfo name="${table.tableStyle ?? 'TableStyleLight1'}" showFirstColumn="0" showLastColumn="0" showRowStripes="1" showColumnStripes="0"/></table>`
  );
}

/** A formula that every row of a column shares, so that new rows get it too. */
function commonFormula(table: NewTable, index: number): string | undefined {
  const formulas = new Set(
    table.rows.map((row) => {
      const cell = row[index];
      return typeof cell === 'object' ? cell.formula : undefined;
    }),
  );
  const [formula] = formulas;
  return formulas.size === 1 && formula !== undefined ? storedFormula(formula) : undefined;
}
