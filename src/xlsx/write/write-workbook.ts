import { rangeName, sheetPrefix } from '../address.ts';
import { checkNewWorkbook } from './check-new-workbook.ts';
import { dynamicArrayMetadata } from '../parts/metadata.ts';
import type { NewSheet, NewWorkbook } from './new-workbook.ts';
import { DECLARATION, MAIN, OFFICE_LINKS } from '../parts/namespaces.ts';
import { partSet, type PartSet } from '../parts/part-set.ts';
import { chartXml } from './write-chart.ts';
import { drawingXml } from './write-drawing.ts';
import { sheetXml } from './write-sheet.ts';
import { styleSheet } from './write-styles.ts';
import { tableXml } from './write-table.ts';
import { escapeXml } from '../xml/xml-text.ts';
import { pack, writeZip } from '../zip/zip-write.ts';

/**
 * The bytes of a new .xlsx. The same description gives the same bytes. A description that no
 * workbook can hold (two values in one cell, a bad name) is our own mistake and throws.
 */
export function writeWorkbook(book: NewWorkbook): Uint8Array {
  checkNewWorkbook(book);
  const parts = partSet();
  const styles = styleSheet(book.font ?? { name: 'Calibri', size: 11 });
  const active = activeIndex(book);
  const sheetIds = book.sheets.map((sheet, index) => {
    const part = `xl/worksheets/sheet${index + 1}.xml`;
    const tables = (sheet.tables ?? []).map((table) => {
      const id = parts.next('table');
      const target = `xl/tables/table${id}.xml`;
      parts.add(target, 'table', tableXml(table, id));
      return parts.link(part, 'table', target);
    });
    const drawing = addCharts(parts, part, sheet, book);
    parts.add(part, 'worksheet', sheetXml(sheet, styles, { drawing, tables }, index === active));
    return parts.link('xl/workbook.xml', 'worksheet', part);
  });
  parts.add('xl/styles.xml', 'styles', styles.xml());
  parts.link('xl/workbook.xml', 'styles', 'xl/styles.xml');
  parts.add('xl/metadata.xml', 'sheetMetadata', dynamicArrayMetadata);
  parts.link('xl/workbook.xml', 'sheetMetadata', 'xl/metadata.xml');
  parts.add('xl/workbook.xml', 'workbook', workbookXml(book, sheetIds, active));
  parts.link('', 'officeDocument', 'xl/workbook.xml');
  addProperties(parts, book.title);
  return writeZip(parts.all().map(([name, xml]) => pack(name, new TextEncoder().encode(xml))));
}

function activeIndex(book: NewWorkbook): number {
  const wanted = book.sheets.findIndex((sheet) => sheet.name === book.activeSheet && !sheet.hidden);
  return wanted >= 0 ? wanted : book.sheets.findIndex((sheet) => !sheet.hidden);
}

function addCharts(parts: PartSet, sheetPart: string, sheet: NewSheet, book: NewWorkbook) {
  const charts = sheet.charts ?? [];
  if (charts.length === 0) return undefined;
  const drawing = `xl/drawings/drawing${parts.next('drawing')}.xml`;
  const ids = charts.map((chart) => {
    const target = `xl/charts/chart${parts.next('chart')}.xml`;
    parts.add(target, 'chart', chartXml(chart, book));
    return parts.link(drawing, 'chart', target);
  });
  parts.add(drawing, 'drawing', drawingXml(charts, ids));
  return parts.link(sheetPart, 'drawing', drawing);
}

function workbookXml(book: NewWorkbook, sheetIds: readonly string[], active: number): string {
  const sheets = book.sheets.map(
    (sheet, index) =>
      `<sheet name="${escapeXml(sheet.name)}" sheetId="${index + 1}"${sheet.hidden ? ' state="hidden"' : ''} r:id="${sheetIds[index]}"/>`,
  );
  const names = definedNames(book);
  return (
    `${DECLARATION}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE_LINKS}">` +
    // A recent calculation engine: cached values stay, so that add-in functions show their last
    // result where the add-in is missing.
    '<fileVersion appName="xl" lastEdited="7" lowestEdited="7" rupBuild="22228"/><workbookPr defaultThemeVersion="124226"/>' +
    `<bookViews><workbookView xWindow="0" yWindow="0" windowWidth="24000" windowHeight="12000" activeTab="${active}"/></bookViews>` +
    `<sheets>${sheets.join('')}</sheets>${names ? `<definedNames>${names}</definedNames>` : ''}` +
    '<calcPr calcId="191029"/></workbook>'
  );
}

function definedNames(book: NewWorkbook): string {
  const own = (book.names ?? []).map(({ name, sheet, range }) => ({
    attributes: `name="${escapeXml(name)}"`,
    refersTo: `${sheetPrefix(sheet)}${absolute(rangeName(range))}`,
  }));
  const printed = book.sheets.flatMap((sheet, index) => {
    const { repeatRows, area } = sheet.print ?? {};
    const of = (name: string, reference: string) => ({
      attributes: `name="_xlnm.${name}" localSheetId="${index}"`,
      refersTo: `${sheetPrefix(sheet.name)}${reference}`,
    });
    return [
      ...(area ? [of('Print_Area', absolute(rangeName(area)))] : []),
      ...(repeatRows ? [of('Print_Titles', `$1:$${repeatRows}`)] : []),
    ];
  });
  return [...own, ...printed]
    .map(
      ({ attributes, refersTo }) =>
        `<definedName ${attributes}>${escapeXml(refersTo)}</definedName>`,
    )
    .join('');
}

function absolute(range: string): string {
  return range.replace(/([A-Z]+)(\d+)/g, '$$$1$$$2');
}

function addProperties(parts: PartSet, title: string | undefined): void {
  // LibreOffice keeps cached texts of formulas only in files that name this application.
  parts.add('docProps/app.xml', 'extendedProperties', APPLICATION);
  parts.link('', 'extended-properties', 'docProps/app.xml');
  if (title === undefined) return;
  const core = 'http://schemas.openxmlformats.org/package/2006/metadata/core-properties';
  parts.add(
    'docProps/core.xml',
    'coreProperties',
    `${DECLARATION}<cp:coreProperties xmlns:cp="${core}" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title>${escapeXml(title)}</dc:title></cp:coreProperties>`,
  );
  parts.link('', 'coreProperties', 'docProps/core.xml');
}

const APPLICATION = `${DECLARATION}<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>Microsoft Excel</Application><AppVersion>16.0300</AppVersion></Properties>`;
