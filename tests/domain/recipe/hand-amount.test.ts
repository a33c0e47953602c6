import { expect, it } from 'vitest';
import { Exact } from '../../../src/domain/kernel/exact.ts';
import { handAmount, needsFinerScale } from '../../../src/domain/recipe/hand-amount.ts';

it.each([
  ['172.3', 'g', 1, '172'],
  ['172.5', 'g', 1, '173'],
  ['172.3', 'g', 5, '170'],
  ['172.34', 'g', 0, '172.3'],
  // A pinch is never rounded away: below ten steps, a scale ten times finer.
  ['9.96', 'g', 1, '10'],
  ['2.44', 'g', 1, '2.4'],
  ['0.3149', 'g', 1, '0.31'],
  ['0.04449', 'g', 1, '0.044'],
  ['0.0004', 'g', 1, '0'],
  ['6.7073170731707314', 'drops', 1, '7'],
  ['0.5', 'drops', 1, '1'],
  ['0.49', 'drops', 1, '0'],
  ['34.56', 'ml', 1, '34.6'],
  ['0.456', 'ml', 1, '0.46'],
  ['1.5', 'each', 1, '1.5'],
] as const)('%s %s measured in steps of %j g is %s', (amount, unit, step, measured) => {
  expect(handAmount(new Exact(amount), unit, new Exact(step)).toString()).toBe(measured);
});

it.each([
  ['172', 1, false],
  ['2.4', 1, true],
  ['172.3', 0, false],
])('%s g with a scale of %j g asks for a finer one: %j', (g, step, isAsked) => {
  expect(needsFinerScale(new Exact(g), 'g', new Exact(step))).toBe(isAsked);
});
