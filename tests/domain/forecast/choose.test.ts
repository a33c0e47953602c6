import { describe, expect, it } from 'vitest';
import { crossValidate, rank } from '../../../src/domain/forecast/choose.ts';
import type { Method } from '../../../src/domain/forecast/method.ts';
import { lumpyMethodsFor, methodsFor } from '../../../src/domain/forecast/methods.ts';
import { Mean, Naive } from '../../../src/domain/forecast/simple-steppers.ts';

const naive = (first: number, borrowsSlope = false): Method => ({
  name: 'naive',
  parameters: [],
  known: 1,
  borrowsSlope,
  begin: () => new Naive([first]),
});

describe('AICc: n·ln(mean squared error) + 2k + 2k(k + 1)/(n − k − 1)', () => {
  // By hand: four errors of 1 or -1, their mean square 1.
  it.each([
    ['one figure, the spread of the errors', [1, 2, 1, 2, 1], false, 0 + 2 + 4 / 2],
    ['a slope taken from the history counts', [1, 2, 1, 2, 1], true, 0 + 4 + 12 / 1],
    ['hardly any values: the last term as with one to spare', [1, 2, 1], false, 0 + 2 + 4 / 1],
    ['no error to speak of', [1, 1, 1, 1, 1], false, 4 * Math.log(1e-12) + 2 + 4 / 2],
  ] as const)('%s', (_, values, borrowsSlope, score) => {
    expect(rank([naive(1, borrowsSlope)], values)[0]?.score).toBeCloseTo(score, 9);
  });

  it('the best first, and of equals the plainer', () => {
    const plain = naive(1);
    const same = { ...naive(1), name: 'the same' };
    const worse = { ...naive(1, true), name: 'worse' };
    const ranked = rank([worse, plain, same], [1, 2, 1, 2, 1]);
    expect(ranked.map(({ method }) => method.name)).toEqual(['naive', 'the same', 'worse']);
  });

  it('errors count only where no method starts from the value', () => {
    const late: Method = { ...naive(9), name: 'late', known: 3, begin: () => new Naive([1]) };
    const ranked = rank([naive(1), late], [1, 50, 1, 2, 1, 2, 1]);
    expect(ranked.map(({ score }) => score)).toEqual([4, 4]);
  });
});

describe('the methods a history is fit for', () => {
  const names = (values: readonly number[], season: number): string[] =>
    methodsFor(values, season).map(({ name }) => name);
  const year = [5, 6, 7, 8];

  it('less than a season: no season', () => {
    expect(names(year, 4).some((name) => /season|Winters/.test(name))).toBe(false);
    expect(names(year, 1).some((name) => /season|Winters/.test(name))).toBe(false);
  });

  it('more than one season: as a season ago', () => {
    expect(names([...year, 5], 4).filter((name) => /season|Winters/.test(name))).toEqual([
      'seasonal naive (as a season ago)',
    ]);
  });

  it('two seasons: Holt-Winters, multiplying only where something is always sold', () => {
    const multiplying = (values: readonly number[]): number =>
      names(values, 4).filter((name) => name.includes('multiplicative')).length;
    expect(multiplying([...year, ...year])).toBe(3);
    expect(multiplying([...year, 5, 0, 7, 8])).toBe(0);
    expect(names([...year, 5, 0, 7, 8], 4)).toContain('Holt-Winters, additive, damped trend');
  });
});

describe('methods for a history with many empty periods', () => {
  const names = (values: readonly number[], season: number): string[] =>
    lumpyMethodsFor(values, season).map(({ name }) => name);
  const empty = [0, 0, 3, 0];

  it('never take a season ago for the next, and look at seasons only after three of them', () => {
    const plain = ['average', 'lumpy demand (Teunter, Syntetos and Babai)'];
    expect(names([...empty, ...empty], 4)).toEqual(plain);
    expect(names([...empty, ...empty, ...empty], 4)).toEqual([
      ...plain,
      'seasonal smoothing, additive',
    ]);
  });

  it('are judged by foreseeing each of the newest values from those before it alone', () => {
    // By hand: the last three are 0, 2, 0, and the averages before them 2/3, 2/4, 4/5.
    const values = [2, 0, 0, 0, 2, 0];
    const byAverage = crossValidate((known) => [naiveMean(known)], values);
    const errors = [0 - 2 / 3, 2 - 2 / 4, 0 - 4 / 5];
    const mean = errors.reduce((sum, error) => sum + error ** 2, 0) / 3;
    expect(byAverage[0]?.score).toBeCloseTo(mean, 12);
  });

  it('leave out what is too new to foresee them all', () => {
    const values = [1, 0, 2, 0, 0, 1, 0, 0];
    const late = (known: readonly number[]): Method[] =>
      known.length > 5
        ? [naiveMean(known), { ...naiveMean(known), name: 'late' }]
        : [naiveMean(known)];
    expect(crossValidate(late, values).map(({ method }) => method.name)).toEqual(['naive mean']);
  });
});

const naiveMean = (known: readonly number[]): Method => ({
  name: 'naive mean',
  parameters: [],
  known: 1,
  borrowsSlope: false,
  begin: () => new Mean(known[0] ?? 0, 1),
});
