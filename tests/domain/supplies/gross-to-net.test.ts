import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Exact, exact, sum, toCell, zero } from '../../../src/domain/kernel/exact.ts';
import {
  type Bucket,
  grossToNet,
  type NetBucket,
} from '../../../src/domain/supplies/gross-to-net.ts';

const buckets = (gross: readonly number[], receipts: readonly number[] = []): Bucket[] =>
  gross.map((quantity, index) => ({
    gross: exact(quantity),
    receipts: exact(receipts[index] ?? 0),
    losses: zero,
  }));

const projected = (rows: readonly NetBucket[]): number[] =>
  rows.map((row) => toCell(row.projected));
const net = (rows: readonly NetBucket[]): number[] => rows.map((row) => toCell(row.net));

/** When orders must be placed so that planned receipts come in time. */
interface Releases {
  /** What to order in each span. */
  readonly orders: readonly Exact[];
  /** What should have been ordered before the first span. */
  readonly overdue: Exact;
}

/** Moves planned receipts earlier by the lead time, in spans. */
function releasesOf(buckets: readonly NetBucket[], lead: number): Releases {
  const late = buckets.slice(0, lead).reduce((sum, { planned }) => sum.plus(planned), zero);
  return {
    orders: buckets.map((_, index) => buckets[index + lead]?.planned ?? zero),
    overdue: late,
  };
}

const cells = (figures: readonly Exact[]): number[] => figures.map(toCell);

describe('a chair of seat, back and legs (lead time two weeks each, lot for lot)', () => {
  // Source: the textbook example "chair" on scribd, document 521630993: REFERENCES M1.
  const chair = grossToNet(exact(260), buckets([150, 0, 70, 0, 175, 0, 90, 60]));
  const releases = releasesOf(chair, 2);
  const part = (perChair: number, onHand: number, coming: number) => {
    const gross = cells(releases.orders).map((quantity) => quantity * perChair);
    return grossToNet(exact(onHand), buckets(gross, [coming]));
  };

  it('chair', () => {
    expect(projected(chair)).toEqual([110, 110, 40, 40, 0, 0, 0, 0]);
    expect(net(chair)).toEqual([0, 0, 0, 0, 135, 0, 90, 60]);
    expect(cells(releases.orders)).toEqual([0, 0, 135, 0, 90, 60, 0, 0]);
    expect(toCell(releases.overdue)).toBe(0);
  });

  it.each([
    ['seat', 1, 60, 50, [110, 110, 0, 0], [0, 0, 25, 0, 90, 60], [25, 0, 90, 60]],
    ['back', 1, 40, 10, [50, 50, 0, 0], [0, 0, 85, 0, 90, 60], [85, 0, 90, 60]],
    ['legs', 4, 80, 0, [80, 80, 0, 0], [0, 0, 460, 0, 360, 240], [460, 0, 360, 240]],
  ] as const)('%s', (_, perChair, onHand, coming, stock, missing, orders) => {
    const rows = part(perChair, onHand, coming);
    expect(projected(rows).slice(0, 4)).toEqual(stock);
    expect(projected(rows).slice(4)).toEqual([0, 0, 0, 0]);
    expect(net(rows)).toEqual([...missing, 0, 0]);
    expect(cells(releasesOf(rows, 2).orders)).toEqual([...orders, 0, 0, 0, 0]);
  });
});

it('a seat in lots of 230', () => {
  // Source: Krajewski and Ritzman, item C (inputs on slides it.scribd.com 353225171; the result from
  // memory, which follows from them); REFERENCES M2.
  const rows = grossToNet(exact(37), buckets([150, 0, 0, 120, 0, 150, 120, 0], [230]), exact(230));
  expect(projected(rows)).toEqual([117, 117, 117, 227, 227, 77, 187, 187]);
  expect(cells(rows.map(({ planned }) => planned))).toEqual([0, 0, 0, 230, 0, 0, 230, 0]);
  expect(cells(releasesOf(rows, 2).orders)).toEqual([0, 230, 0, 0, 230, 0, 0, 0]);
});

describe('shutters of two frames and four wood sections', () => {
  // Source: Stevenson, Operations Management, chapter on material requirements (inputs in a lecture's
  // transcript; the result from memory, which follows from them); REFERENCES M3.
  const shutters = releasesOf(grossToNet(zero, buckets([0, 0, 0, 100, 0, 0, 0, 150])), 1).orders;
  const twice = (orders: readonly Exact[], count: number): Bucket[] =>
    buckets(cells(orders).map((quantity) => quantity * count));

  it('lot for lot', () => {
    expect(cells(shutters)).toEqual([0, 0, 100, 0, 0, 0, 150, 0]);
    const frames = releasesOf(grossToNet(zero, twice(shutters, 2)), 2).orders;
    expect(cells(frames)).toEqual([200, 0, 0, 0, 300, 0, 0, 0]);
    const sections = grossToNet(
      zero,
      buckets(
        cells(shutters).map((quantity) => quantity * 4),
        [70],
      ),
    );
    expect(cells(releasesOf(sections, 1).orders)).toEqual([0, 330, 0, 0, 0, 600, 0, 0]);
  });

  it('frames in lots of 320, sections in lots of 70', () => {
    const frames = grossToNet(zero, twice(shutters, 2), exact(320));
    expect(cells(releasesOf(frames, 2).orders)).toEqual([320, 0, 0, 0, 320, 0, 0, 0]);
    expect([projected(frames)[2], projected(frames)[6]]).toEqual([120, 140]);
    const wood = buckets(
      cells(shutters).map((quantity) => quantity * 4),
      [70],
    );
    const sections = grossToNet(zero, wood, exact(70));
    expect(cells(releasesOf(sections, 1).orders)).toEqual([0, 350, 0, 0, 0, 630, 0, 0]);
    expect([projected(sections)[2], projected(sections)[6]]).toEqual([20, 50]);
  });
});

it('what should have been ordered before the first week is told apart', () => {
  const rows = grossToNet(exact(5), buckets([10, 20, 0, 7]));
  const { orders, overdue } = releasesOf(rows, 2);
  expect(toCell(overdue)).toBe(25);
  expect(cells(orders)).toEqual([0, 7, 0, 0]);
});

it('stock that goes out of date is gone', () => {
  const rows = grossToNet(exact(100), [
    { gross: exact(30), receipts: zero, losses: zero },
    { gross: exact(30), receipts: zero, losses: exact(60) },
  ]);
  expect(net(rows)).toEqual([0, 20]);
});

describe('laws', () => {
  const quantity = fc.integer({ min: 0, max: 1000 });
  const rows = fc.array(fc.record({ gross: quantity, receipts: quantity }), { maxLength: 12 });

  it('stock and net are never below nothing, and planned receipts cover the net', () => {
    fc.assert(
      fc.property(quantity, rows, fc.constantFrom(0, 1, 70, 230), (onHand, plan, lot) => {
        const given = buckets(
          plan.map(({ gross }) => gross),
          plan.map(({ receipts }) => receipts),
        );
        const found = grossToNet(exact(onHand), given, exact(lot));
        for (const { projected: stock, net: missing, planned } of found) {
          expect(toCell(stock)).toBeGreaterThanOrEqual(0);
          expect(toCell(missing)).toBeGreaterThanOrEqual(0);
          expect(planned.gte(missing)).toBe(true);
          if (lot > 0) expect(toCell(planned.mod(lot))).toBe(0);
          else expect(planned.eq(missing)).toBe(true);
        }
      }),
    );
  });

  it('what comes in less what goes out is what is left', () => {
    fc.assert(
      fc.property(quantity, rows, (onHand, plan) => {
        const given = buckets(
          plan.map(({ gross }) => gross),
          plan.map(({ receipts }) => receipts),
        );
        const found = grossToNet(exact(onHand), given, exact(70));
        const left = exact(onHand)
          .plus(sum(given.map(({ receipts }) => receipts)))
          .plus(sum(found.map(({ planned }) => planned)))
          .minus(sum(given.map(({ gross }) => gross)));
        expect(toCell(found.at(-1)?.projected ?? exact(onHand))).toBe(toCell(left));
      }),
    );
  });
});
