import fc from 'fast-check';
import { expect, it } from 'vitest';
import { exact } from '../../../src/domain/kernel/exact.ts';
import { Shelf } from '../../../src/domain/stock/shelf.ts';

const LOTS = ['A', 'B', ''];

const layers = fc.array(
  fc.record({ lot: fc.constantFrom('A', 'B'), quantity: fc.integer({ min: 1, max: 40 }) }),
  { minLength: 1, maxLength: 5 },
);
/** Quarters, and what no whole millionth is. */
const takings = fc.array(
  fc.record({
    lot: fc.constantFrom(...LOTS),
    quantity: fc.oneof(
      fc.integer({ min: 0, max: 80 }).map((n) => n / 4),
      fc.constant(0.123456789),
    ),
  }),
  { maxLength: 12 },
);

type Layers = readonly { readonly lot: string; readonly quantity: number }[];

function shelfOf(given: Layers): Shelf {
  const shelf = new Shelf();
  given.forEach(({ lot, quantity }, at) => {
    const [came, unitValue] = [45_000 + at, undefined];
    shelf.put({
      lot,
      came,
      bestBefore: undefined,
      quantity: exact(quantity),
      unitValue,
      entry: String(at),
    });
  });
  return shelf;
}

const standing = (shelf: Shelf) => ({
  filled: shelf.filled.map(({ lot, entry, quantity }) => [lot, entry, quantity.toString()]),
  owed: shelf.owed.toString(),
});

it('what is taken off without asking leaves what taking leaves, to the last digit and the last debt', () => {
  fc.assert(
    fc.property(layers, takings, (given, all) => {
      const [asked, unasked] = [shelfOf(given), shelfOf(given)];
      for (const { quantity, lot } of all) {
        asked.take(exact(quantity), lot);
        unasked.takeOff(quantity, lot);
      }
      expect(standing(unasked)).toEqual(standing(asked));
    }),
    { numRuns: 200 },
  );
});
