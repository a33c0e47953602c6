/** The one workbook's id inside the grid. */
export const UNIT_ID = 'book';

/** The grid's id of the image's sheet number `index`. */
export const sheetIdAt = (index: number): string => `sheet-${String(index)}`;
