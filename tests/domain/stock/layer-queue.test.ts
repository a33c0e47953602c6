import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact, zero } from '../../../src/domain/kernel/exact.ts';
import { pickOrder, type StockLayer } from '../../../src/domain/stock/layer.ts';
import { LayerQueue } from '../../../src/domain/stock/layer-queue.ts';

/** Layers put in and emptied in any order; the queue is held against looking through all of them. */
const steps = fc.array(
  fc.oneof(
    fc.record({
      lot: fc.constantFrom('A', 'B', 'C', 'D'),
      came: fc.integer({ min: 1, max: 5 }),
      bestBefore: fc.option(fc.integer({ min: 1, max: 5 }), { nil: undefined }),
      quantity: fc.integer({ min: 0, max: 2 }),
    }),
    fc.constant('empty the next' as const),
  ),
  { maxLength: 40 },
);

describe('layers in picking order', () => {
  it('offer the same next layer, and the same filled ones, as a look through all of them', () => {
    fc.assert(
      fc.property(steps, (all) => {
        const queue = new LayerQueue();
        const plain: StockLayer[] = [];
        const isFilled = ({ quantity }: StockLayer): boolean => quantity.gt(0);
        for (const [at, step] of all.entries()) {
          if (step === 'empty the next') {
            const next = queue.next();
            expect(next).toBe(plain.find(isFilled));
            if (next !== undefined) next.quantity = zero;
          } else {
            const quantity = exact(step.quantity);
            const layer = { ...step, quantity, unitValue: undefined, entry: String(at) };
            queue.insert(layer);
            plain.push(layer);
            plain.sort(pickOrder);
          }
          expect(queue.filled()).toEqual(plain.filter(isFilled));
        }
      }),
    );
  });
});
