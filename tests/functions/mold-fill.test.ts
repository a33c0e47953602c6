import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';

const call = await loadFunctions();
const down = (cells: readonly unknown[]): unknown[][] => cells.map((cell) => [cell]);
const fillOf = (weights: readonly unknown[], ...more: readonly unknown[]): unknown =>
  (call('MOLDFILL', down(weights), ...more) as unknown[][])[1];
const near = (...figures: readonly number[]): unknown[] =>
  figures.map((figure) => expect.closeTo(figure, 5));

/** Twenty readings of a thermometer, s and s/√n as a published guide prints them: REFERENCES Z1, Z2. */
const guide = [
  ...[96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07],
  ...[100.33, 100.42, 100.68, 100.95, 101.11, 101.2, 101.57, 101.84, 102.36, 102.72],
];

describe('MOLDFILL', () => {
  it('has the mean, spread and uncertainty that the guide to uncertainty prints', () => {
    expect(call('MOLDFILL', down(guide))).toEqual([
      ['Fill g', 'SD g', 'Uncertainty g', 'Trials'],
      [...near(100.145, 1.48884, 0.332916), 20],
    ]);
  });

  it.each([
    // REFERENCES Z3.
    [[10.1, 10.3, 9.9, 10.1, 10.0], [], [10.08, 0.148324, 0.066332], 5],
    // In a cup of 12.5 g.
    [[22.6, 22.8, 22.4, 22.6, 22.5], [12.5], [10.08, 0.148324, 0.066332], 5],
    // 24.9 and 25.1 ml of water of 20 °C (REFERENCES Z4), and soap of 1.05 g/ml that would take its place.
    [[24.85518, 25.05482], ['', 0.9982, 1.05], [26.25, 0.148492, 0.105], 2],
    // Blank cells, and those that a host hands over as 0, are no weighings.
    [[25, '', 25, 0], [], [25, 0, 0], 2],
  ])('of %j with %j is %j over %d', (weights, more, figures, trials) => {
    expect(fillOf(weights, ...more)).toEqual([...near(...figures), trials]);
  });

  it('has no spread of one weighing (REFERENCES Z3), and takes a row or a number for a column', () => {
    expect(fillOf([25.5])).toEqual([25.5, '', '', 1]);
    expect(call('MOLDFILL', 25.5)).toEqual(call('MOLDFILL', [[25.5]]));
    expect(call('MOLDFILL', [[24, 26]])).toEqual(call('MOLDFILL', [[24], [26]]));
  });

  it.each([
    [['', ''], [], '#N/A', /^weights is blank\. Give the weight of each fill/],
    [['a lot'], [], '#VALUE!', /^Weight 1 is "a lot", which is not a number/],
    [[25, '25'], [], '#VALUE!', /^Weight 2 is "25"/],
    [[25, 12], [12.5], '#VALUE!', /^Weight 2 is 12, no more than the 12\.5 g of the empty mold/],
    [[25, -1], [], '#VALUE!', /^Weight 2 is -1/],
    [[25], [-1], '#VALUE!', /^empty g is -1/],
    [[25], ['', -1], '#VALUE!', /^density of what was weighed is -1/],
    [[25], ['', '', -1], '#VALUE!', /^density of soap is -1/],
    [[25], ['', 'thick'], '#VALUE!', /^density of what was weighed is "thick"/],
  ])('of %j with %j fails', (weights, more, code, sentence) => {
    const failure = errorOf(() => fillOf(weights, ...more));
    expect(failure.code).toBe(code);
    expect(failure.message).toMatch(sentence);
  });
});

describe('law', () => {
  const weights = fc.array(fc.integer({ min: 1, max: 9999 }), { minLength: 2, maxLength: 12 });

  it('the order of weighing makes no difference, nor what all were weighed in', () => {
    fc.assert(
      fc.property(weights, fc.integer({ min: 0, max: 500 }), (some, empty) => {
        const plain = fillOf(some) as number[];
        expect(fillOf([...some].reverse())).toEqual(plain);
        expect(
          fillOf(
            some.map((weight) => weight + empty),
            empty,
          ),
        ).toEqual(plain);
        expect(plain[2]).toBeCloseTo((plain[1] ?? 0) / Math.sqrt(some.length), 9);
      }),
      { numRuns: 50 },
    );
  });

  it('soap k times as dense weighs k times as much, its spread with it', () => {
    fc.assert(
      fc.property(weights, fc.integer({ min: 1, max: 40 }), (some, tenths) => {
        const [fill = 0, sd = 0] = fillOf(some) as number[];
        const [denser, wider] = fillOf(some, '', 1, tenths / 10) as number[];
        expect(denser).toBeCloseTo((fill * tenths) / 10, 6);
        expect(wider).toBeCloseTo((sd * tenths) / 10, 6);
      }),
      { numRuns: 50 },
    );
  });
});
