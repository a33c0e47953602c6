import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPasted } from '../../../taskpane/sell/paste-rows.ts';
import { bookOf } from '../book-of.ts';
import { marketWorkshop } from '../market-workshop.ts';

const book = bookOf(marketWorkshop);
const wave = (bars: string, price?: string) => ({ design: 'Plain Wave', bars, price });

describe('readPasted', () => {
  it.each([
    ['Plain Wave\t3\t4.5', [wave('3', '4.5')]],
    ['plain  wave\t3', [wave('3', undefined)]],
    ['Plain Wave;3;4,50', [wave('3', '4,50')]],
    ['Design\tBars\tPrice\nPlain Wave\t3\t$4.50\t\n\n', [wave('3', '$4.50')]],
    ['Plain Wave\t2\t$4,50\r\nPlain Wave\t1\tUSD 4', [wave('2', '$4,50'), wave('1', 'USD 4')]],
    ['\n\t\nPlain Wave\t12\n', [wave('12', undefined)]],
  ])('reads %j', (text, lines) => {
    expect(readPasted(text, book)).toEqual({ lines, problems: [] });
  });

  it.each([
    ['', 'There are no rows here to take.'],
    ['Design\tBars', 'There are no rows here to take.'],
    ['Plain Wafe\t3', 'Row 1: "Plain Wafe" is not a design in Designs. Did you mean "Plain Wave"?'],
    ['Plain Wave', 'Row 1: Bars of "Plain Wave" is blank. Type a number, 0 or more.'],
    ['Plain Wave\t0', 'Row 1: Bars of "Plain Wave" is 0. Type a whole number, 1 or more.'],
    ['Plain Wave\t1.5', 'Row 1: Bars of "Plain Wave" is 1.5. Type a whole number, 1 or more.'],
    ['Plain Wave\t2\t-4', 'Row 1: Price of "Plain Wave" is "-4". Type a plain number, 0 or more.'],
    [
      'Plain Wave\t2\t=1+1',
      'Row 1: Price of "Plain Wave" is "=1+1". Type a plain number, 0 or more.',
    ],
    [
      'Plain Wave\t2\t4,50 €',
      'Row 1: Price of "Plain Wave" is "4,50 €". Money is in USD here, as Settings say. Type what it is in USD.',
    ],
    ['Plain Wave\t2\t4\tFair', 'Row 1: it has 4 cells. Give design, bars and price only.'],
  ])('says what is wrong with %j', (text, sentence) => {
    expect(readPasted(text, book)).toEqual({ lines: [], problems: [sentence] });
  });

  it('counts rows as the maker sees them, and reads the good ones', () => {
    const { lines, problems } = readPasted('Design\tBars\n\nPlain Wave\t1\nWave\tx', book);
    expect(lines).toEqual([wave('1')]);
    expect(problems).toEqual([expect.stringMatching(/^Row 4: "Wave" is not a design/u)]);
  });

  it('refuses a whole sheet', () => {
    const text = Array.from({ length: 201 }, () => 'Plain Wave\t1').join('\n');
    expect(readPasted(text, book).problems).toEqual([
      'These are 201 rows. Copy only those of one selling day.',
    ]);
  });

  it('reads or says a sentence of any text', () => {
    const cell = fc.oneof(fc.string(), fc.constantFrom('Plain Wave', '3', '4.5', '\t', '\n'));
    fc.assert(
      fc.property(fc.array(cell), (cells) => {
        const { lines, problems } = readPasted(cells.join('\t'), book);
        expect(lines.length + problems.length).toBeGreaterThan(0);
      }),
    );
  });
});
