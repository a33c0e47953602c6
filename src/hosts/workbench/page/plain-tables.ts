import { contains, overlaps } from '../../../xlsx/address.ts';
import type { CellImage, RangeImage, WorkbookImage } from '../../../xlsx/image.ts';
import { bodyOf } from './live-tables.ts';

/** Whether all tables hold plain cells only, which are in a file as they are: no formula's last answer. */
export const holdPlainCells = ({ sheets }: WorkbookImage): boolean =>
  sheets.every(({ tables, cells }) => {
    const bodies = tables.map(({ range }) => bodyOf(range));
    return !cells.some((cell) => bodies.some((body) => answersIn(cell, body)));
  });

const answersIn = ({ formula, spill, row, column }: CellImage, range: RangeImage): boolean =>
  formula !== undefined &&
  (spill === undefined ? contains(range, row, column) : overlaps(spill, range));
