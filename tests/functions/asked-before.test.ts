import { describe, expect, it } from 'vitest';
import { askedBefore } from '../../functions/asked-before.ts';
import { asIfOn } from '../../functions/clock.ts';
import { functions } from '../../functions/index.ts';
import { records } from '../../functions/records/index.ts';
import { ranges, table, type Tables, withCell, workshop } from '../support/small-book.ts';

const restingOnNothing = { takes: {}, restsOn: [] };
const restingOnDay = { takes: {}, restsOn: ['day'] } as const;

/** A function that counts how often it was worked out, under a name of its own. */
function counted(id: string, record: Parameters<typeof askedBefore>[1] = restingOnNothing) {
  let times = 0;
  const ask = askedBefore(id, record, (...given) => {
    times += 1;
    if (given[0] === 'fail') throw new Error('not now');
    return [times];
  });
  return { ask, times: () => times };
}

describe('a question asked before', () => {
  it('is worked out once', () => {
    const { ask, times } = counted('ONCE');
    expect(ask('Teal', 12, undefined, [['a', 1]])).toEqual(ask('Teal', 12, undefined, [['a', 1]]));
    expect(times()).toBe(1);
  });

  it('is answered whole again, whatever the caller did to the rows it got', () => {
    const ask = askedBefore('ROWS', restingOnNothing, () => [
      ['Item', 'On hand'],
      ['Teal', 12],
    ]);
    for (const turn of ['first', 'second', 'third']) {
      const rows = ask('Teal') as unknown[][];
      expect(rows, turn).toEqual([
        ['Item', 'On hand'],
        ['Teal', 12],
      ]);
      rows.shift();
      rows[0]?.push('spoilt');
    }
  });

  it.each([
    ['a number and its text', [1], ['1']],
    ['a truth and its text', [true], ['true']],
    ['a blank and nothing', [''], [undefined]],
    ['no number and nothing', [Number.NaN], [undefined]],
    ['one row and one column', [[['a', 'b']]], [[['a'], ['b']]]],
    ['a text that looks like two arguments', ['a","b'], ['a', 'b']],
    ['another order', ['a', 'b'], ['b', 'a']],
  ])('keeps apart: %s', (name, one, other) => {
    const { ask, times } = counted(`APART ${name}`);
    ask(...one);
    ask(...other);
    expect(times()).toBe(2);
  });

  it.each([
    ['again on another day where it rests on the day', restingOnDay, 2],
    ['once for all days where it does not', restingOnNothing, 1],
  ])('is asked %s', (name, record, wanted) => {
    const { ask, times } = counted(`DAY ${name}`, record);
    asIfOn(46_000, () => ask('Teal'));
    asIfOn(46_001, () => ask('Teal'));
    expect(times()).toBe(wanted);
  });

  it('is asked again after a failure', () => {
    const { ask, times } = counted('FAIL');
    expect(() => ask('fail')).toThrow('not now');
    expect(() => ask('fail')).toThrow('not now');
    expect(times()).toBe(2);
  });

  it('is not kept for long ranges, nor for things that are no cells', () => {
    const { ask, times } = counted('LONG');
    const long = Array.from({ length: 201 }, () => [1]);
    ask(long);
    ask(long);
    ask([[new Error('#N/A')]]);
    ask([[new Error('#N/A')]]);
    expect(times()).toBe(4);
  });

  it('is answered for the book it is asked of', () => {
    const onHand = (tables: typeof workshop) =>
      functions['ONHAND']?.('Clear base', functions['BOOK']?.(...ranges(tables)));
    const before = onHand(workshop);
    expect(onHand(withCell(workshop, 'Lots', 1, 'Quantity', 1))).not.toBe(before);
    expect(onHand(workshop)).toBe(before);
  });

  it('is worked out again after an edit just where it hangs on what was edited', () => {
    let times = 0;
    // An id whose answers are handed on; a third argument keeps these questions apart from all others.
    const ask = askedBefore('ONHAND', records.ONHAND, (...given) => {
      times += 1;
      return functions['ONHAND']?.(given[0], given[1]);
    });
    const bookOf = (tables: Tables) => functions['BOOK']?.(...ranges(tables));
    const items = ['Clear base', 'Blue mica'];
    const line = (id: string, quantity: number) => [
      id,
      45_000,
      'counted',
      items[0] ?? '',
      quantity,
    ];
    const [before, after] = [1, 2].map((quantity) => ({
      ...workshop,
      LedgerLines: table('Entry | When | Reason | Material | Quantity', line('E1', quantity)),
    }));
    if (before === undefined || after === undefined) throw new Error('no tables');
    const held = items.map((item) => ask(item, bookOf(before), 'mine'));
    expect(times).toBe(2);
    const now = items.map((item) => ask(item, bookOf(after), 'mine'));
    expect(times).toBe(3);
    expect(now).toEqual([Number(held[0]) + 1, held[1]]);
  });
});
