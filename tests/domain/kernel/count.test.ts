import { describe, expect, it } from 'vitest';
import { count } from '../../../src/domain/kernel/count.ts';
import { exact } from '../../../src/domain/kernel/exact.ts';

describe('count', () => {
  it.each([
    [0, '0 bars'],
    [1, '1 bar'],
    [2, '2 bars'],
    [exact(1), '1 bar'],
    [exact(0.5), '0.5 bars'],
  ])('%s', (number, text) => {
    expect(count(number, 'bar')).toBe(text);
  });

  it('takes a plural of its own', () => {
    expect(count(2, 'batch', 'batches')).toBe('2 batches');
  });
});
