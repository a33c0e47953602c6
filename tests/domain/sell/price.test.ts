import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Exact } from '../../../src/domain/kernel/exact.ts';
import { breakEven, priceFor, type PriceQuestion } from '../../../src/domain/sell/price.ts';

const exact = (value: string | number): Exact => new Exact(value);

const question = (cost: string, marginPercent: string, rest: Partial<PriceQuestion> = {}) => ({
  cost: exact(cost),
  marginPercent: exact(marginPercent),
  feePercent: exact(0),
  feeFixed: exact(0),
  taxPercent: exact(0),
  ending: undefined,
  ...rest,
});

function asked(q: PriceQuestion): string {
  const result = priceFor(q);
  return result.ok ? result.value.toString() : result.failure.sentence;
}

describe('priceFor', () => {
  it.each([
    // margin = markup ÷ (1 + markup): REFERENCES C15, C16 (40 at 50 % markup is 60).
    ['a markup of 25 % is a margin of 20 %', question('40', '20'), '50'],
    ['a markup of 100 % is a margin of 50 %', question('40', '50'), '80'],
    ['no margin asks the cost', question('40', '0'), '40'],
    // Gross-up (net + fixed) ÷ (1 − p): REFERENCES T7, T10, rounded up here, not to the nearest.
    [
      '2.9 % + 0.30 on 100',
      question('100', '0', { feePercent: exact('2.9'), feeFixed: exact('0.3') }),
      '103.3',
    ],
    ['2.75 % on 8', question('8', '0', { feePercent: exact('2.75') }), '8.23'],
    [
      '2.6 % + 0.10 on 10',
      question('10', '0', { feePercent: exact('2.6'), feeFixed: exact('0.1') }),
      '10.37',
    ],
    // REFERENCES T8: net 10 000 at 3 % is 10 309.278351.
    ['3 % on 10 000', question('10000', '0', { feePercent: exact(3) }), '10309.28'],
    ['tax on top of the net price', question('100', '0', { taxPercent: exact(20) }), '120'],
    ['an ending above', question('4.77', '40', { ending: exact('0.95') }), '7.95'],
    ['an ending is never rounded down', question('4.78', '40', { ending: exact('0.95') }), '8.95'],
    ['half endings', question('7.2', '0', { ending: exact('0.5') }), '7.5'],
    ['whole endings', question('7.2', '0', { ending: exact(0) }), '8'],
  ])('%s', (_, q, expected) => {
    expect(asked(q)).toBe(expected);
  });

  it.each([
    ['margin of 100', question('4', '100'), /below 100/],
    [
      'margin and fees that leave no price',
      question('4', '98', { feePercent: exact(2) }),
      /leaves nothing/,
    ],
    ['a negative cost', question('-1', '30'), /cost is -1/],
    ['a negative fee', question('1', '30', { feeFixed: exact(-1) }), /fee fixed is -1/],
    ['a tax of 100', question('1', '30', { taxPercent: exact(100) }), /tax % is 100/],
    // Contract §2: less than 1 % can't be meant, so 0.3 is a cell that shows 30 %.
    ['a margin below 1 %', question('1', '0.3'), /margin is 0.3 %.*: 30 if 30 % is meant/],
    [
      'an ending of half cents',
      question('1', '30', { ending: exact('0.995') }),
      /ending is 0.995, which no price in cents ends in. Give two digits/,
    ],
    ['an ending of 1 or more', question('1', '30', { ending: exact('1.95') }), /ending is 1.95/],
  ])('refuses %s with a sentence', (_, q, sentence) => {
    expect(asked(q)).toMatch(sentence);
  });

  it('leaves at least the margin, and less than a cent too much before rounding to an ending', () => {
    const percent = fc.integer({ min: 0, max: 3000 }).map((n) => exact(n).div(100));
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100_000 }).map((cents) => exact(cents).div(100)),
        fc.integer({ min: 0, max: 6000 }).map((n) => exact(n).div(100)),
        percent,
        fc.integer({ min: 0, max: 100 }).map((cents) => exact(cents).div(100)),
        percent,
        (cost, marginPercent, feePercent, feeFixed, taxPercent) => {
          const result = priceFor({
            cost,
            marginPercent,
            feePercent,
            feeFixed,
            taxPercent,
            ending: undefined,
          });
          if (!result.ok) return;
          const margin = (price: Exact): Exact => {
            const net = price.div(taxPercent.div(100).plus(1));
            return net.minus(price.times(feePercent).div(100)).minus(feeFixed).minus(cost).div(net);
          };
          const wanted = marginPercent.div(100);
          expect(margin(result.value).gte(wanted.minus('1e-30'))).toBe(true);
          const centLess = result.value.minus('0.01');
          if (centLess.gt(0)) expect(margin(centLess).lt(wanted.plus('1e-30'))).toBe(true);
        },
      ),
    );
  });
});

describe('breakEven', () => {
  it.each([
    // An open managerial-accounting textbook, chapter 3: REFERENCES C1, C6, C7, C8.
    ['C1', '18000', '100', '20', '225'],
    ['C6, a kiosk with commission', '700', '25', '15.5', '74'],
    ['C7', '3000', '35', '20', '200'],
    ['C8', '20000', '400', '250', '134'],
    ['nothing to cover', '0', '5', '2', '0'],
  ])('%s', (_, fixed, price, cost, units) => {
    const result = breakEven(exact(fixed), exact(price), exact(cost));
    expect(result.ok && result.value.toString()).toBe(units);
  });

  it.each([
    ['an equal price', '10', '5', '5', 'divides by nothing'],
    ['a price below cost', '10', '4', '5', 'wrong'],
    ['a negative price', '10', '-4', '5', 'wrong'],
  ])('refuses %s', (_, fixed, price, cost, kind) => {
    const result = breakEven(exact(fixed), exact(price), exact(cost));
    expect(!result.ok && result.failure.kind).toBe(kind);
  });
});
