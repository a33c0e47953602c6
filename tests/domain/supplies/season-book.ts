import type { Book } from '../../../src/domain/book/book.ts';
import { type Day, readDay } from '../../../src/domain/kernel/day.ts';
import type { Result } from '../../../src/domain/kernel/result.ts';
import type { Cell } from '../../../src/workbook/port.ts';
import { readBook, recogniseTables } from '../../../src/workbook/read/read-book.ts';
import { ranges, table, type Tables } from '../../support/small-book.ts';

export function sound<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.failure.sentence);
  return result.value;
}

export function refusal<T>(result: Result<T>): { kind: string; sentence: string } {
  if (result.ok) throw new Error('It answered and should have refused.');
  return result.failure;
}

export const bookOf = (tables: Tables): Book =>
  sound(readBook(sound(recogniseTables(ranges(tables)))));

export function on(date: string): Day {
  const day = readDay(date);
  if (day === undefined) throw new Error(`${date} is no date.`);
  return day;
}

type Rows = readonly (readonly Cell[])[];

/** Plain bricks of 100 g of base in a box, and mosaics of 36 tiles: round figures for sums by hand. */
export function season(parts: {
  readonly plan: Rows;
  readonly settings?: Rows;
  readonly lots?: Rows;
  readonly moves?: Rows;
  readonly molds?: Rows;
  readonly materials?: Rows;
}): Tables {
  return {
    Settings: table('Setting | Value | Note', ['Buffer days', 3, ''], ...(parts.settings ?? [])),
    Materials: table(
      'Material | Kind | Unit | Pack size | Pack price | Lead days | Least packs',
      ...(parts.materials ?? [
        ['Base', 'base', 'g', 1000, 8, 5, ''],
        ['Box', 'packaging', 'each', 10, 4, 2, 3],
      ]),
    ),
    Lots: table('Lot | Material | Received | Quantity | Paid | Best before', ...(parts.lots ?? [])),
    LedgerLines: table(
      'Entry | When | Reason | Material | Quantity | Lot | Value | Note',
      ...(parts.moves ?? []),
    ),
    Molds: table(
      'Mold | Makes | Cavities | Fill g | Scrape g | Sections | Set minutes',
      ...(parts.molds ?? [
        ['Tiles', 'tiles', 36, 25, 0, '', ''],
        ['Loaf', 'bars', 6, '', '', '', ''],
      ]),
    ),
    Designs: table(
      'Design | Bar mold | Labour minutes | Setup minutes | Hands-off hours',
      ['Brick', '', 5, 20, ''],
      ['Mosaic', 'Loaf', 10, 30, 36],
      ['Slab', 'Loaf', 10, 30, ''],
      ['Twin', 'Loaf', 10, 30, 36],
      ['Idea', '', '', '', ''],
    ),
    Layers: table(
      'Design | Layer | Part | Item | Mold | Per bar | Per',
      ['Brick', '1', 'pour', 'Base', '', 100, 'g'],
      ['Brick', '2', 'pack', 'Box', '', 1, 'each'],
      ['Mosaic', '1', 'tiles', 'Base', 'Tiles', 24, 'each'],
      ['Mosaic', '2', 'pour', 'Base', '', 50, 'g'],
      ['Slab', '1', 'pour', 'Base', '', 90, 'g'],
      ['Twin', '1', 'tiles', 'Base', 'Tiles', 24, 'each'],
    ),
    Plan: table('Plan line | Design | Bars | Ready by', ...parts.plan),
  };
}
