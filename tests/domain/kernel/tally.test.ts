import { describe, expect, it } from 'vitest';
import { exact, sum } from '../../../src/domain/kernel/exact.ts';
import { Tally } from '../../../src/domain/kernel/tally.ts';

describe('the running sum, at its edges (the law is in tests/laws/numbers.test.ts)', () => {
  it.each([
    ['nothing', []],
    ['tenths', Array.from({ length: 10 }, () => 0.1)],
    [
      'a number of more than 15 digits',
      [Number('9007199254.740991'), Number('5000000000.1234567')],
    ],
    ['sums past what whole millionths hold', [9e9, 9e9, 9e9, 0.000001]],
    ['numbers of more than six decimals', [1e-7, 1e-7, 0.1234567]],
    ['opposites', [1e12, 0.3, -1e12]],
  ])('%s', (_, numbers) => {
    const tally = new Tally();
    for (const number of numbers) tally.add(number);
    expect(tally.total().toString()).toBe(sum(numbers.map(exact)).toString());
  });
});
