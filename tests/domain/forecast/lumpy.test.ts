import { describe, expect, it } from 'vitest';
import { isLumpy, Lumpy, lumpyStart } from '../../../src/domain/forecast/lumpy.ts';
import { stepErrors } from '../../../src/domain/forecast/stepper.ts';

describe('demand with many empty periods', () => {
  it('smooths the chance every period and the size only where there is demand', () => {
    // By hand: chance .5 → .45 → .505, size 10 → 10 → 12; forecasts 5, 4.5, 6.06.
    const lumpy = new Lumpy({ alpha: 0.2, beta: 0.1 }, 0.5, 10);
    const errors = stepErrors(lumpy, [0, 20]);
    expect(errors[0]).toBeCloseTo(-5, 12);
    expect(errors[1]).toBeCloseTo(15.5, 12);
    expect(lumpy.predict()).toBeCloseTo(6.06, 12);
  });

  it('falls month by month once nothing is sold any more', () => {
    const lumpy = new Lumpy({ alpha: 0.2, beta: 0.1 }, 0.5, 10);
    stepErrors(lumpy, new Array<number>(60).fill(0));
    expect(lumpy.predict()).toBeLessThan(0.01);
  });

  it('starts from the share of months with demand and their average', () => {
    expect(lumpyStart([0, 4, 0, 8])).toEqual({ chance: 0.5, size: 6 });
    expect(lumpyStart([0, 0])).toEqual({ chance: 0, size: 0 });
  });

  it('counts as lumpy from about every fourth month empty', () => {
    expect(isLumpy([1, 1, 0, 1, 1, 1, 1, 1])).toBe(false);
    expect(isLumpy([1, 1, 0, 1, 1, 0])).toBe(true);
    expect(isLumpy([0, 0])).toBe(false);
  });
});
