import type { Change } from '../../src/workbook/port.ts';

/** Lines of one recipe, which share its name as their id. */
export const teal = {
  headers: ['Colour', 'Ingredient', 'Amount'],
  rows: [
    ['Teal', 'Base', 100],
    ['Teal', 'Blue', 8],
  ],
} as const;

/** Appends the lines of Teal with these amounts: of base, blue and mica. */
export const recipe = (...amounts: readonly number[]): Change => ({
  appends: [
    {
      table: 'Colours',
      idColumn: 'Colour',
      shareIds: true,
      rows: amounts.map((Amount, at) => ({
        Colour: 'Teal',
        Ingredient: ['Base', 'Blue', 'Mica'][at] ?? '',
        Amount,
      })),
    },
  ],
  updates: [],
});
