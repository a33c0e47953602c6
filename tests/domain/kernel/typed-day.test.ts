import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isoDate, readDay } from '../../../src/domain/kernel/day.ts';
import { howToTypeDay, isUnclearDay } from '../../../src/domain/kernel/typed-day.ts';

describe('a day as people write it', () => {
  const either = 'Type 2026-04-03 for 3 April 2026 or 2026-03-04 for 4 March 2026';
  it.each([
    ['3.4.26', either],
    ['3/4/26', either],
    ['3-4-26', either],
    [' 03/04/2026 ', either],
    ['25.4.26', 'Type 2026-04-25'],
    ['4/25/2026', 'Type 2026-04-25'],
    ['4/4/26', 'Type 2026-04-04'],
    ['2026/4/3', 'Type 2026-04-03'],
    ['2026-4-3', 'Type 2026-04-03'],
    ['April 13', 'Type the year with it: 2026-04-13 if 2026 is meant'],
    ['13 April', 'Type the year with it: 2026-04-13 if 2026 is meant'],
    ['13. Apr.', 'Type the year with it: 2026-04-13 if 2026 is meant'],
    ['Sept 1st', 'Type the year with it: 2026-09-01 if 2026 is meant'],
    ['3/4', 'Type the year with it: 2026-04-03 or 2026-03-04 if 2026 is meant'],
    ['April 13, 2026', 'Type 2026-04-13'],
    ['13th of April 2026', 'Type 2026-04-13'],
    ['13 April ’26', 'Type 2026-04-13'],
    ['30 February 2026', 'Type it like 2026-11-25'],
    ['31.31.26', 'Type it like 2026-11-25'],
    ['0099-01-01', 'Type it like 2026-11-25'],
    ['next week', 'Type it like 2026-11-25'],
    ['April 2026', 'Type it like 2026-11-25'],
  ])('%s is asked back', (typed, says) => {
    expect(howToTypeDay(typed)).toBe(says);
  });

  it.each(['3.4.26', '4/4/26', '3/4/2026', 'April 13', '13 April', '1/2', '13 April ’26'])(
    'no host may take %s for a day',
    (typed) => {
      expect(isUnclearDay(typed)).toBe(true);
    },
  );

  it.each(['2026-04-03', '13 April 2026', '25/4/2026', '3.4', '12', '1.234', 'Maybe 3', 'Slate'])(
    '%s is left as it is',
    (typed) => {
      expect(isUnclearDay(typed)).toBe(false);
    },
  );

  it('names only days that can be typed, whatever was', () => {
    const part = fc.oneof(fc.nat(40), fc.integer({ min: 1900, max: 2100 })).map(String);
    const sign = fc.constantFrom('.', '/', '-', ' ');
    const word = fc.constantFrom('april', 'Feb', 'sept', 'x');
    const typed = fc.oneof(
      fc.string(),
      fc.tuple(part, sign, fc.oneof(part, word), sign, part).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(typed, (text) => {
        for (const iso of howToTypeDay(text).match(/\d{4}-\d{2}-\d{2}/gu) ?? []) {
          const day = readDay(iso);
          expect(day === undefined ? undefined : isoDate(day), text).toBe(iso);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
