import { describe, expect, it } from 'vitest';
import {
  layerParts,
  materialKinds,
  moldUses,
  moveReasons,
} from '../../../src/domain/book/words.ts';
import { choice, Trouble } from '../../../src/workbook/column.ts';
import { tables } from '../../../src/workbook/schema.ts';

describe('a word out of a few', () => {
  it.each([
    ['embed', 'embeds'],
    ['Embeds ', 'embeds'],
    ['tile', 'tiles'],
    ['BAR', 'bars'],
  ] as const)('Makes: %s is read as %s', (cell, word) => {
    expect(tables.molds.columns.makes.read(cell)).toBe(word);
  });

  it.each([
    ['embeds', 'embed'],
    ['tile', 'tiles'],
    ['pours', 'pour'],
    ['scents', 'scent'],
  ] as const)('Part: %s is read as %s', (cell, word) => {
    expect(tables.layers.columns.part.read(cell)).toBe(word);
  });

  it('is taken of one or of several wherever it is chosen, and never for another', () => {
    for (const words of [materialKinds, moldUses, layerParts, moveReasons]) {
      const column = choice<string>('Word', words, 'One of a few.');
      for (const word of words) {
        expect(column.read(word)).toBe(word);
        expect(column.read(word.endsWith('s') ? word.slice(0, -1) : `${word}s`)).toBe(word);
      }
    }
  });

  it('is refused where it is none of them', () => {
    for (const cell of ['embedss', 's', 'em', 'embedded']) {
      expect(tables.molds.columns.makes.read(cell)).toBeInstanceOf(Trouble);
    }
  });

  it('keeps words that end in s of themselves', () => {
    const column = choice('Prices include tax', ['yes', 'no'], 'Either.');
    expect(column.read('yes')).toBe('yes');
    expect(column.read('ye')).toBeInstanceOf(Trouble);
  });
});
