/** Names that the file format fixes (ECMA-376 and [MS-XLSX]). */
export const DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
export const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
export const OFFICE_LINKS = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
export const PACKAGE_LINKS = 'http://schemas.openxmlformats.org/package/2006/relationships';
export const CONTENT_TYPES = 'http://schemas.openxmlformats.org/package/2006/content-types';
export const DRAWING = 'http://schemas.openxmlformats.org/drawingml/2006/main';
export const SHEET_DRAWING = 'http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing';
export const CHART = 'http://schemas.openxmlformats.org/drawingml/2006/chart';

const SPREADSHEET = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/** The content type of each kind of part. */
export const contentTypes = {
  workbook: `${SPREADSHEET}.sheet.main+xml`,
  worksheet: `${SPREADSHEET}.worksheet+xml`,
  styles: `${SPREADSHEET}.styles+xml`,
  table: `${SPREADSHEET}.table+xml`,
  sheetMetadata: `${SPREADSHEET}.sheetMetadata+xml`,
  drawing: 'application/vnd.openxmlformats-officedocument.drawing+xml',
  chart: 'application/vnd.openxmlformats-officedocument.drawingml.chart+xml',
  extendedProperties: 'application/vnd.openxmlformats-officedocument.extended-properties+xml',
  coreProperties: 'application/vnd.openxmlformats-package.core-properties+xml',
} as const;

export type PartKind = keyof typeof contentTypes;
