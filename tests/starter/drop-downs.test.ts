import { beforeAll, describe, expect, it } from 'vitest';
import type { WorkbookImage } from '../../src/xlsx/image.ts';
import { byExcelJs, imageOf } from '../xlsx/support.ts';
import { type Built, build, variants } from './built.ts';

describe.each(variants)('drop-downs of the %s workbook', (_name, make) => {
  let built: Built;
  let image: WorkbookImage;
  beforeAll(() => {
    built = build(make);
    image = imageOf(built.bytes);
  });

  it('all lead to cells or words that the workbench can show', () => {
    for (const { name, validations = [] } of built.described.sheets) {
      const shown = image.sheets.find((sheet) => sheet.name === name)?.validations ?? [];
      expect(shown, name).toHaveLength(validations.length);
    }
    expect(lists('Mosaic')[0]?.choices).toMatchObject({ sheet: 'Lists' });
    expect(lists('What to weigh')[0]?.choices).toMatchObject({ sheet: 'Bar designs' });
    expect(lists('Shelf')[0]?.choices).toContain('fragrance');
  });

  it('refuse another word only beside a formula, which would take it for no', () => {
    for (const { validations = [], tables = [] } of built.described.sheets) {
      for (const { choices, strict } of validations) {
        expect(strict).toBe(tables.length === 0 && Array.isArray(choices));
      }
    }
  });

  it('let a word of Book be typed in any spelling, and say how it is read', async () => {
    const book = await byExcelJs(built.bytes);
    const below = (sheet: string, header: string) => {
      const table = tableOn(sheet);
      const column = table?.columns.findIndex((each) => each.header === header) ?? -1;
      return book.getWorksheet(sheet)?.getCell((table?.row ?? -1) + 2, column + 1).dataValidation;
    };
    for (const [sheet, header, first] of [
      ['Mold shelf', 'Makes', 'tiles'],
      ['Bar layers', 'Part', 'tiles'],
    ] as const) {
      const rule = below(sheet, header);
      expect(rule?.errorStyle).toBe('warning');
      expect(rule?.error).toMatch(new RegExp(`^Use one of: ${first}, .+ one or of several`));
    }
  });

  it('say it in no more letters than a spreadsheet shows', () => {
    for (const { validations = [] } of built.described.sheets) {
      for (const { says = '' } of validations) expect(says.length).toBeLessThanOrEqual(255);
    }
  });

  const tableOn = (sheet: string) =>
    built.described.sheets.find(({ name }) => name === sheet)?.tables?.[0];

  const lists = (sheet: string) =>
    image.sheets.find(({ name }) => name === sheet)?.validations ?? [];
});

describe('the list behind the drop-downs', () => {
  it('has each colour of the demo once, and the materials after them', () => {
    const { described, starter } = build(variants[0]?.[1] ?? neverMade);
    const materials = starter.tables.find(({ name }) => name === 'Materials')?.rows ?? [];
    const column = (at: number) =>
      (described.sheets.find(({ name }) => name === 'Lists')?.cells ?? [])
        .filter(({ row, column, value }) => row > 0 && column === at && value !== '')
        .map(({ value }) => value);
    const colours = ['Slate', 'Teal', 'Amber', 'Driftwood', 'Foam', 'Rockpool', 'Dusk'];
    expect(column(0)).toEqual(colours);
    expect(column(1).slice(0, 9)).toEqual([...colours, 'Clear base', 'White base']);
    expect(materials.length).toBeGreaterThan(10);
    expect(column(1).slice(7)).toEqual(materials.map(([material]) => material));
  });
});

const neverMade = (): never => {
  throw new Error('There is no demo variant');
};
