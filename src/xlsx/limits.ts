/** How much a workbook may hold before it is refused: far above a soap ledger, far below harm. */

export const MAX_FILE_BYTES = 128 * 1024 * 1024;
export const MAX_PARTS = 5_000;
/** One part, unpacked. */
export const MAX_PART_BYTES = 256 * 1024 * 1024;
/** All parts together, unpacked. */
export const MAX_TOTAL_BYTES = 512 * 1024 * 1024;
/** Unpacked ÷ packed of one part; real sheets stay under about 60, a bomb is near 1000. */
export const MAX_RATIO = 400;
/** Below this unpacked size the ratio says nothing. */
export const RATIO_MATTERS_BYTES = 4 * 1024 * 1024;
export const MAX_XML_DEPTH = 200;
/** Of all sheets together. */
export const MAX_CELLS = 4_000_000;
export const MAX_SHEETS = 300;
/** Merges, lists and highlights of all sheets together, and the cells that they reach of what is shown. */
export const MAX_RANGES = 100_000;
export const MAX_REACH = 300_000;
/** Cells from which a list may take its choices. */
export const MAX_CHOICES = 50_000;

/** The sheet's own bounds (ECMA-376 as Excel implements it). */
export const MAX_ROWS = 1_048_576;
export const MAX_COLUMNS = 16_384;
export const MAX_TEXT = 32_767;
export const MAX_FORMULA = 8_192;
