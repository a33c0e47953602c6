import { beforeAll, describe, expect, it } from 'vitest';
import { asIfOn } from '../../../functions/clock.ts';
import { functions } from '../../../functions/index.ts';
import type { WorkbookImage } from '../../../src/xlsx/image.ts';
import { demoFile, emptyFile } from '../../../src/starter/file/starter-file.ts';
import { tableKinds, tables } from '../../../src/workbook/schema.ts';
import { demoDay } from '../../../src/starter/demo/season.ts';
import { tableOf } from '../../end-to-end/saved-file.ts';
import { imageOf } from '../../xlsx/support.ts';

/** A Sunday more than a year after the demo was written. */
const TODAY = demoDay + 53 * 7 + 4;

describe('the demo written for another day', () => {
  let image: WorkbookImage;
  let book: unknown;
  beforeAll(() => {
    image = imageOf(demoFile(TODAY));
    const ranges = tableKinds.map((kind) => {
      const { headers, rows } = tableOf(image, tables[kind].name);
      return [headers, ...rows];
    });
    book = ask('BOOK', ...ranges);
  });

  const cell = (sheet: string, row: number, column: number) =>
    image.sheets
      .find(({ name }) => name === sheet)
      ?.cells.find((each) => each.row === row && each.column === column);

  it('keeps the answers of that day, not of the day that it was written for', () => {
    expect(cell('Start here', 3, 1)?.value).toBe(book);
    // The day that Season works with, unseen, and what it asks as of: blank, which is today.
    expect(cell('Season', 3, 9)).toMatchObject({ value: TODAY });
    expect(cell('Season', 3, 1)?.value ?? '').toBe('');
    const supplies = asIfOn(TODAY, () => ask('SUPPLIES', book)) as unknown[][];
    expect(supplies.length).toBeGreaterThan(5);
    supplies.slice(1).forEach(([material, , onHand], index) => {
      expect(cell('Season', 45 + index, 0)?.value).toBe(material);
      expect(cell('Season', 45 + index, 3)?.value).toBeCloseTo(Number(onHand), 9);
    });
  });

  it('asks no sheet for a fixed day but the period that it shows', () => {
    const asked = image.sheets.flatMap(({ name, cells }) =>
      cells
        .filter(({ value, column }) => column === 0 && /^As of$/u.test(String(value)))
        .map(({ row }) => [name, cell(name, row, 1)?.value ?? '']),
    );
    expect(asked).toEqual(
      ['Costing', 'Pricing', 'Reorder', 'Reorder check', 'Season', 'What if'].map((name) => [
        name,
        '',
      ]),
    );
    // The month of the first fair, and the last one that is over.
    expect(Number(cell('Calendar', 3, 1)?.value)).toBeGreaterThan(TODAY);
    expect(Number(cell('Forecast', 3, 1)?.value)).toBeLessThan(TODAY);
    expect(Number(cell('Forecast', 3, 1)?.value)).toBeGreaterThan(TODAY - 32);
  });

  it('is the same on each call for the same day, and another on another', () => {
    const again = imageOf(demoFile(TODAY));
    expect(again).toEqual(image);
    expect(imageOf(demoFile(TODAY + 1))).not.toEqual(image);
    expect(emptyFile()).toEqual(emptyFile());
  });
});

const ask = (id: string, ...given: unknown[]): unknown => functions[id]?.(...given);
