import { rangeName } from '../address.ts';
import { storedFormula } from '../formula/formula-text.ts';
import { DECLARATION, MAIN } from '../parts/namespaces.ts';
import type { NewTable, NewTableCell } from './new-workbook.ts';
import { rangeOf } from './sheet-grid.ts';
import { escapeXml, storeText } from '../xml/xml-text.ts';

/** One table part; `id` is unique in the workbook. */
export function tableXml(table: NewTable, id: number): string {
  const ref = rangeName(rangeOf(table));
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
  const formulaOf = (row: readonly NewTableCell[] | undefined) => {
    const cell = row?.[index];
    return typeof cell === 'object' ? cell.formula : undefined;
  };
  const formula = formulaOf(table.rows[0]);
  return formula !== undefined && table.rows.every((row) => formulaOf(row) === formula)
    ? storedFormula(formula)
    : undefined;
}
