import { describe, expect, it } from 'vitest';
import { asIfOn } from '../../functions/clock.ts';
import { CellFailure } from '../../functions/failure.ts';
import { functions } from '../../functions/index.ts';
import { ranges, workshop } from '../support/small-book.ts';

const ask = (id: string, ...given: unknown[]): unknown => functions[id]?.(...given);

describe('POUR.TODAY', () => {
  it('is the day that a blank date stands for in every other function', () => {
    const book = ask('BOOK', ...ranges(workshop));
    // 2026-11-25 and the day after.
    for (const day of [46351, 46352]) {
      asIfOn(day, () => {
        expect(ask('TODAY', book)).toBe(day);
        expect(ask('STOCKLIST', book, '')).toEqual(ask('STOCKLIST', book, day));
      });
    }
  });

  it('fails with the book that it hangs on, so that it is worked out anew when the book is', () => {
    expect(() => ask('TODAY', 'book 0123456789abcdef')).toThrow(CellFailure);
    expect(() => ask('TODAY', '')).toThrow(/book is blank/u);
  });
});
