import { describe, expect, it } from 'vitest';
import { readState, saysGivenAs, saysUndone } from '../../../src/domain/book/words.ts';

describe('the words that a book is read by', () => {
  it.each([
    ['gift', true],
    ['Gift to Ana', true],
    ['  own  use: hand soap', true],
    ['donation, school fair', true],
    ['testers for the stall', false],
    ['giftwrap', false],
    ['a gift', false],
    ['', false],
  ])('a note of %j says what a thing was given as: %j', (note, says) => {
    expect(saysGivenAs(note)).toBe(says);
  });

  it.each([
    ['posted', 'recorded'],
    [' Posted ', 'recorded'],
    ['recorded', 'recorded'],
    ['undone', 'undone'],
    ['on the curing shelf', 'on the curing shelf'],
  ])('the state %j is %j', (state, read) => {
    expect(readState(state)).toBe(read);
  });

  it.each([
    ['Undone', true],
    ['undone ', true],
    ['not undone', false],
    ['', false],
  ])('the state %j says undone: %j', (state, says) => {
    expect(saysUndone(state)).toBe(says);
  });
});
