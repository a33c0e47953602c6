import { serializeRangeWithSheet } from '@univerjs/preset-sheets-core';
import type { RangeImage } from '../../../xlsx/image.ts';

/** A range of a sheet as a formula writes it, such as "'Back room'!$A$1:$B$2". */
export const absolute = (sheet: string, range: RangeImage): string =>
  // 3 = both row and column absolute.
  serializeRangeWithSheet(sheet, { ...range, startAbsoluteRefType: 3, endAbsoluteRefType: 3 });
