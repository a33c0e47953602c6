import { describe, expect, it } from 'vitest';
import { exact } from '../../../src/domain/kernel/exact.ts';
import { checkPour } from '../../../src/domain/ledger/check-pour.ts';
import type { Pour } from '../../../src/domain/ledger/pour.ts';
import { readTables } from '../../support/ledger-of.ts';
import { pourOf } from '../../support/pour-of.ts';
import { workshop } from '../../support/small-book.ts';

const book = readTables(workshop);

/** What is said of twelve Tide Pool, of which twelve are started, that differ so; "" where it makes sense. */
function saidOf(differs: Partial<Pour>): string {
  const result = checkPour({ ...pourOf('Tide Pool', 12)(book), ...differs });
  return result.ok ? '' : result.failure.sentence;
}
const of = (name: string, figure: number) => new Map([[name, exact(figure)]]);

describe('what came out of a pour', () => {
  it.each<[string, Partial<Pour>]>([
    ['all good', {}],
    ['some seconds and lost', { good: 9, seconds: 2, lost: 1 }],
    ['none good', { good: 0, seconds: 0, lost: 12 }],
    ['fewer, from a line older than the column Lost', { good: 9, lost: undefined }],
    ['no minutes at all', { minutes: 0 }],
    ['a leftover and spares of nothing', { leftoverG: of('Teal leftover', 0) }],
    // 75 g of Teal were melted.
    ['all of a colour left over', { leftoverG: of('Teal leftover', 75) }],
  ])('%s makes sense', (_, differs) => {
    expect(saidOf(differs)).toBe('');
  });

  it.each<[Partial<Pour>, string]>([
    [{ good: 1.5 }, 'Good bars is 1.5. Give a whole number, 0 or more.'],
    [{ good: -1 }, 'Good bars is -1. Give a whole number, 0 or more.'],
    [{ good: 11, seconds: 0.5 }, 'Seconds is 0.5. Give a whole number, 0 or more.'],
    [{ good: 11, seconds: -1 }, 'Seconds is -1. Give a whole number, 0 or more.'],
    [{ good: 11, lost: 0.5 }, 'Lost is 0.5. Give a whole number, 0 or more.'],
    [{ lost: Number.NaN }, 'Lost is NaN. Give a whole number, 0 or more.'],
    [
      { good: 12, seconds: 1 },
      '12 good and 1 second are more than the 12 bars started. Mend the numbers, or start more bars.',
    ],
    [
      { good: 11, seconds: 1, lost: 1 },
      '11 good, 1 second and 1 lost are more than the 12 bars started. Mend the numbers, or start more bars.',
    ],
    [
      { good: 11 },
      '12 bars were started, and 1 is not told of yet. Type it under Good bars, Seconds or Lost.',
    ],
    [
      { good: 9 },
      '12 bars were started, and 3 are not told of yet. Type them under Good bars, Seconds or Lost.',
    ],
    [{ minutes: -1 }, 'Minutes is -1. Give 0 or more.'],
    [{ minutes: Number.POSITIVE_INFINITY }, 'Minutes is Infinity. Give 0 or more.'],
    [{ weighed: of('Teal > Clear base', -0.1) }, 'Teal > Clear base is -0.1. Give 0 or more.'],
    [{ sparePieces: of('Teal × Tiles', -1) }, 'Teal × Tiles is -1. Give 0 or more.'],
    [{ leftoverG: of('Teal leftover', Infinity) }, 'Teal leftover is Infinity. Give 0 or more.'],
    [
      // By hand 75 g of base, rounded up, and 15 drops of 0.048 g.
      { leftoverG: of('Teal leftover', 80) },
      'Teal: leftover, spare tiles and blends come to 80 g, more than the 75.7 g that was melted. Weigh the leftover again.',
    ],
    [
      // 5.9 g of mica by hand and 190 g of base; 45 g went into Mist.
      { leftoverG: of('Slate leftover', 160) },
      'Slate: leftover, spare tiles and blends come to 205 g, more than the 195.9 g that was melted. Weigh the leftover again.',
    ],
    [
      // 36 tiles are 25 g.
      { sparePieces: of('Teal × Tiles', 144) },
      'Teal: leftover, spare tiles and blends come to 100 g, more than the 75.7 g that was melted. Weigh the leftover again.',
    ],
  ])('%o: %s', (differs, sentence) => {
    expect(saidOf(differs)).toBe(sentence);
  });
});
