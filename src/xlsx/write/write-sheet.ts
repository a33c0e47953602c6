import { columnName, rangeName } from '../address.ts';
import { cellXml } from './cell-xml.ts';
import { storedFormula } from '../formula/formula-text.ts';
import { DECLARATION, MAIN, OFFICE_LINKS } from '../parts/namespaces.ts';
import type { NewSheet, NewValidation } from './new-workbook.ts';
import { sheetGrid, type SheetGrid } from './sheet-grid.ts';
import { colorXml, type StyleSheet } from './write-styles.ts';
import { escapeXml } from '../xml/xml-text.ts';

/** The links of a sheet to its other parts, by their ids. */
export interface SheetLinks {
  readonly drawing: string | undefined;
  readonly tables: readonly string[];
}

/** One worksheet part. `active` is the sheet in front when the file opens. */
export function sheetXml(
  sheet: NewSheet,
  styles: StyleSheet,
  links: SheetLinks,
  active: boolean,
): string {
  const grid = sheetGrid(sheet);
  return (
    `${DECLARATION}<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE_LINKS}">` +
    `<sheetPr>${sheet.tabColor ? colorXml('tabColor', sheet.tabColor) : ''}<pageSetUpPr fitToPage="1"/></sheetPr>` +
    `<dimension ref="${grid.range ? rangeName(grid.range) : 'A1'}"/>${viewXml(sheet, active)}` +
    `<sheetFormatPr defaultRowHeight="15"/>${columnsXml(sheet)}` +
    `<sheetData>${rowsXml(sheet, grid, styles)}</sheetData>${mergesXml(sheet)}` +
    `${highlightsXml(sheet, styles)}${validationsXml(sheet.validations ?? [])}` +
    '<pageMargins left="0.5" right="0.5" top="0.6" bottom="0.6" header="0.3" footer="0.3"/>' +
    `<pageSetup paperSize="9" orientation="${sheet.print?.landscape ? 'landscape' : 'portrait'}" fitToWidth="1" fitToHeight="0"/>` +
    '<headerFooter><oddFooter>&amp;L&amp;A&amp;RPage &amp;P of &amp;N</oddFooter></headerFooter>' +
    `${links.drawing ? `<drawing r:id="${links.drawing}"/>` : ''}${tablePartsXml(links.tables)}</worksheet>`
  );
}

function viewXml(sheet: NewSheet, active: boolean): string {
  const rows = sheet.frozenRows ?? 0;
  const columns = sheet.frozenColumns ?? 0;
  const attributes = `${sheet.gridLines === false ? ' showGridLines="0"' : ''}${active ? ' tabSelected="1"' : ''}`;
  if (rows === 0 && columns === 0) {
    return `<sheetViews><sheetView${attributes} workbookViewId="0"/></sheetViews>`;
  }
  const corner = `${columnName(columns)}${rows + 1}`;
  const pane = rows && columns ? 'bottomRight' : rows ? 'bottomLeft' : 'topRight';
  const split = `${columns ? ` xSplit="${columns}"` : ''}${rows ? ` ySplit="${rows}"` : ''}`;
  return (
    `<sheetViews><sheetView${attributes} workbookViewId="0">` +
    `<pane${split} topLeftCell="${corner}" activePane="${pane}" state="frozen"/>` +
    `<selection pane="${pane}" activeCell="${corner}" sqref="${corner}"/></sheetView></sheetViews>`
  );
}

function columnsXml(sheet: NewSheet): string {
  const widths = new Map<number, number>();
  for (const table of sheet.tables ?? []) {
    table.columns.forEach(({ width }, index) => {
      if (width !== undefined) widths.set(table.column + index, width);
    });
  }
  for (const [column, width] of Object.entries(sheet.columnWidths ?? {})) {
    widths.set(Number(column), width);
  }
  if (widths.size === 0) return '';
  const each = [...widths]
    .sort(([a], [b]) => a - b)
    .map(
      ([at, width]) => `<col min="${at + 1}" max="${at + 1}" width="${width}" customWidth="1"/>`,
    );
  return `<cols>${each.join('')}</cols>`;
}

function rowsXml({ rowHeights = {} }: NewSheet, grid: SheetGrid, styles: StyleSheet): string {
  const heights = new Map(Object.entries(rowHeights).map(([row, height]) => [Number(row), height]));
  const rows = [...new Set([...grid.rows, ...heights.keys()])].sort((a, b) => a - b);
  return rows
    .map((row) => {
      const height = heights.get(row);
      const size = height === undefined ? '' : ` ht="${height}" customHeight="1"`;
      const cells = grid.row(row).map((cell) =>
        cellXml(cell, {
          style: cell.style ? styles.style(cell.style) : 0,
          prefix: '',
          dynamic: 1,
          computed: cell.computed,
        }),
      );
      return [`<row r="${row + 1}"${size}>`, ...cells, '</row>'].join('');
    })
    .join('');
}

function mergesXml({ merges = [] }: NewSheet): string {
  if (merges.length === 0) return '';
  const each = merges.map((range) => `<mergeCell ref="${rangeName(range)}"/>`);
  return `<mergeCells count="${merges.length}">${each.join('')}</mergeCells>`;
}

function highlightsXml({ highlights = [] }: NewSheet, styles: StyleSheet): string {
  return highlights
    .map(
      (highlight, index) =>
        `<conditionalFormatting sqref="${rangeName(highlight.range)}"><cfRule type="expression" dxfId="${styles.highlight(highlight)}" priority="${index + 1}">` +
        `<formula>${escapeXml(storedFormula(highlight.formula))}</formula></cfRule></conditionalFormatting>`,
    )
    .join('');
}

function validationsXml(validations: readonly NewValidation[]): string {
  if (validations.length === 0) return '';
  const each = validations.map(validationXml).join('');
  return `<dataValidations count="${validations.length}">${each}</dataValidations>`;
}

function validationXml({ range, choices, strict = true, says, prompt }: NewValidation): string {
  const source = 'source' in choices ? storedFormula(choices.source) : literalList(choices);
  const message = prompt
    ? ` showInputMessage="1" promptTitle="${escapeXml(prompt.title)}" prompt="${escapeXml(prompt.text)}"`
    : '';
  const error = says === undefined ? '' : ` error="${escapeXml(says)}"`;
  return (
    `<dataValidation type="list" errorStyle="${strict ? 'stop' : 'warning'}" allowBlank="1" showErrorMessage="1"${error}${message} sqref="${rangeName(range)}">` +
    `<formula1>${escapeXml(source)}</formula1></dataValidation>`
  );
}

function literalList(choices: readonly string[]): string {
  const list = choices.join(',');
  if (choices.some((choice) => choice.includes(',')) || list.length > 255) {
    throw new Error(`The choices "${list}" do not fit a drop-down; give a range instead`);
  }
  return `"${list.replaceAll('"', '""')}"`;
}

function tablePartsXml(ids: readonly string[]): string {
  if (ids.length === 0) return '';
  const each = ids.map((id) => `<tablePart r:id="${id}"/>`).join('');
  return `<tableParts count="${ids.length}">${each}</tableParts>`;
}
