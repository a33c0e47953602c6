import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Exact } from '../../../src/domain/kernel/exact.ts';
import { postBatch } from '../../../src/domain/ledger/post-batch.ts';
import { readTables } from '../../support/ledger-of.ts';
import { day, pourOf } from '../../support/pour-of.ts';
import {
  type Tables,
  withCell,
  withRows,
  withSetting,
  workshop,
} from '../../support/small-book.ts';

const poured = day('2024-03-01');

/** Bars of nothing but a blend, so that the colours it is made of go into it whole. */
function blendOnly(base: number, mica: number, slate: number, foam: number, step: number): Tables {
  const cells: readonly (readonly [string, number, string, string | number])[] = [
    ['Colours', 1, 'Amount', base],
    ['Colours', 2, 'Amount', mica],
    ['Colours', 6, 'Amount', slate],
    ['Colours', 7, 'Amount', foam],
    ['Layers', 11, 'Item', 'Mist'],
  ];
  return cells.reduce<Tables>(
    (tables, [name, row, header, cell]) => withCell(tables, name, row, header, cell),
    withSetting(workshop, 'Scale step g', step),
  );
}

describe('a pour that came out as planned', () => {
  const part = fc.integer({ min: 1, max: 40 });

  it('is never told to weigh again, however its thirds are rounded', () => {
    fc.assert(
      fc.property(
        part,
        fc.integer({ min: 1, max: 5 }),
        part,
        part,
        fc.constantFrom(0, 1),
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 0, max: 999 }),
        (base, mica, slate, foam, step, bars, thousandths) => {
          const left = 20 + thousandths / 997;
          const tables = withRows(blendOnly(base, mica, slate, foam, step), 'LedgerLines', [
            'E1',
            '2024-02-01',
            'left over',
            'Slate leftover',
            left,
            '',
            0.2,
          ]);
          const book = readTables(tables);
          for (const useLeftovers of [false, true]) {
            const result = postBatch(
              book,
              pourOf('Plain Bar', bars, { useLeftovers })(book),
              poured,
            );
            expect(result.ok ? 'recorded' : result.failure.sentence).toBe('recorded');
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it('is told to weigh again where a gram too much is left', () => {
    const book = readTables(blendOnly(97, 3, 15, 10, 1));
    const planned = postBatch(book, pourOf('Plain Bar', 7)(book), poured);
    expect(planned.ok).toBe(true);
    const leftoverG = new Map([['Slate leftover', new Exact(1)]]);
    const result = postBatch(book, pourOf('Plain Bar', 7, { leftoverG })(book), poured);
    expect(result.ok ? '' : result.failure.sentence).toMatch(
      /^Slate: .* Weigh the leftover again/u,
    );
  });
});
