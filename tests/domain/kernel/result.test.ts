import { expect, it } from 'vitest';
import {
  all,
  andThen,
  answer,
  notYet,
  wrong,
  wrongBecause,
} from '../../../src/domain/kernel/result.ts';

it('goes on with an answer and hands a failure on', () => {
  expect(andThen(answer(2), (value) => answer(value * 2))).toEqual(answer(4));
  const failure = notYet('No lots yet.');
  expect(andThen(failure, () => answer(1))).toBe(failure);
});

it('takes all answers or the first failure', () => {
  expect(all([answer(1), answer(2)])).toEqual(answer([1, 2]));
  const first = wrong('First.');
  expect(all([answer(1), first, wrong('Second.')])).toBe(first);
});

it('makes the sentence of a look-up only where it is read', () => {
  let made = 0;
  const failure = wrongBecause(() => `Made ${(made += 1)} times.`);
  expect(made).toBe(0);
  expect(failure.ok ? '' : failure.failure.sentence).toBe('Made 1 times.');
});
