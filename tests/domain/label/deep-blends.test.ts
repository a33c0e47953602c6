import { describe, expect, it } from 'vitest';
import { checksOf } from '../../../src/domain/label/checks.ts';
import { ingredientsText } from '../../../src/domain/label/ingredients.ts';
import type { Cell } from '../../../src/workbook/port.ts';
import { withRows } from '../../support/small-book.ts';
import { barTables, bookOf, designOf, sound } from './label-book.ts';

const LEVELS = 19;
const WIDE = 8;
const TODAY = 45_000;

/** Every colour of a level is blended from all of the level below: 8 to the 19th ways down to the base. */
const colours: Cell[][] = Array.from({ length: LEVELS * WIDE }, (_, at) => {
  const level = Math.floor(at / WIDE);
  const name = `Level ${level} no. ${at % WIDE}`;
  return level === 0
    ? [
        [name, 'Base', 99, 'g'],
        [name, 'Tint', 1, 'g'],
      ]
    : Array.from({ length: WIDE }, (_, below) => [name, `Level ${level - 1} no. ${below}`, 1, 'g']);
}).flat();

const book = bookOf(
  withRows(
    barTables(
      [
        { name: 'Base', kind: 'base', inci: 'Glycerin' },
        { name: 'Tint', kind: 'colourant', inci: 'Mica' },
      ],
      { layers: [['Bar', '1', 'pour', `Level ${LEVELS - 1} no. 0`, '', 100, 'g']] },
    ),
    'Colours',
    ...colours,
  ),
);

describe('a colour blended through many levels', () => {
  it('has its label and its checks, each colour taken apart once', () => {
    expect(sound(ingredientsText(book, designOf(book)))).toBe('Glycerin, Mica');
    const tint = sound(checksOf(book, designOf(book), TODAY)).find(({ check }) =>
      check.endsWith('Tint'),
    );
    expect(String(tint?.value)).toBe('1');
  });
});
