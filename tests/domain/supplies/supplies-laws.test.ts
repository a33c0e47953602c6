import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { supplies } from '../../../src/domain/supplies/supplies.ts';
import { bookOf, on, season, sound } from './season-book.ts';

const from = on('2026-11-01');

describe('laws', () => {
  const line = fc.tuple(
    fc.constantFrom('Brick', 'Mosaic'),
    fc.integer({ min: 1, max: 60 }),
    fc.integer({ min: 0, max: 60 }),
  );
  const stock = fc.array(
    fc.tuple(
      fc.constantFrom('Base', 'Box'),
      fc.integer({ min: 1, max: 4000 }),
      fc.integer({ min: -20, max: 80 }),
      fc.integer({ min: 0, max: 70 }),
    ),
    { maxLength: 6 },
  );
  const settings = fc.constantFrom([], [['Minutes per day', 120, '']], [['Rest days', 'Sun', '']]);

  it('what was taken too much is missing as if the plan had taken it', () => {
    const box = (quantity: number, reason: string, at: number) => [
      `E${at}`,
      '2026-10-02',
      reason,
      'Box',
      quantity,
      '',
      '',
      '',
    ];
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 1, max: 500 }),
        (lines, owed) => {
          const plan = lines.map(([design, bars, day], i) => [`P${i}`, design, bars, from + day]);
          const netOf = (moves: Parameters<typeof season>[0]['moves'] = []): number | undefined =>
            sound(supplies(bookOf(season({ plan, moves })), from))
              .lines.find(({ material }) => material.name === 'Box')
              ?.net.toNumber();
          const before = netOf();
          expect(netOf([box(-owed, 'wasted', 1)])).toBe(before && before + owed);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('packs cover the net, net is never negative, and orders come before needs', () => {
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 5 }),
        stock,
        settings,
        fc.boolean(),
        (lines, lots, chosen, reuse) => {
          const tables = season({
            plan: lines.map(([design, bars, day], i) => [`P${i}`, design, bars, from + day]),
            lots: lots.map(([material, quantity, day, keeps], i) => [
              `L${i}`,
              material,
              from + day,
              quantity,
              1,
              keeps === 0 ? '' : from + day + keeps,
            ]),
            settings: chosen,
          });
          for (const found of sound(supplies(bookOf(tables), from, { reuse })).lines) {
            const { material, gross, net, onHand, packs, orders, orderBy, days } = found;
            expect(net.gte(0) && onHand.gte(0)).toBe(true);
            expect(net.lte(gross)).toBe(true);
            expect(packs?.times(material.packSize ?? 0).gte(net)).toBe(true);
            // Without the last pack, or the supplier's least, it would not be enough.
            const spared = packs?.minus(1).times(material.packSize ?? 0);
            if (packs?.gt(material.leastPacks ?? 1)) expect(spared?.lt(net)).toBe(true);
            let bought = net.minus(net);
            for (const { net: missing, day } of days) {
              for (const order of orders) {
                if (order.needBy === day)
                  bought = bought.plus(order.packs.times(material.packSize ?? 0));
              }
              bought = bought.minus(missing);
              expect(bought.gte(0)).toBe(true);
            }
            for (const order of orders) expect(order.orderBy).toBeLessThanOrEqual(order.needBy);
            if (!net.isZero()) expect(orderBy).toBe(orders[0]?.orderBy);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
