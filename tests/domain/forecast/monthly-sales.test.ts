import { expect, it } from 'vitest';
import { findDesign } from '../../../src/domain/book/find.ts';
import { monthlySales } from '../../../src/domain/forecast/monthly-sales.ts';
import { bookOf, on, season, sound } from '../plan/season-book.ts';

const sold = (entry: string, when: string, bars: number, reason = 'sold', note = '') => [
  entry,
  when,
  reason,
  'Brick',
  -bars,
  '',
  '',
  note,
];
const salesOf = (rows: ReturnType<typeof sold>[], today: string) => {
  const book = bookOf(season({ plan: [], moves: rows }));
  return monthlySales(book, sound(findDesign(book, 'Brick')), on(today));
};

it('counts whole months from the first sale on; months without one are 0', () => {
  const rows = [
    sold('E1', '2026-01-31', 4),
    sold('E2', '2026-01-05', 2),
    sold('E3', '2026-03-01', 7),
    sold('E4', '2026-03-02', 1, 'wasted'),
    sold('E5', '2026-04-01', 9),
  ];
  expect(salesOf(rows, '2026-04-30')).toEqual({
    months: ['2026-01', '2026-02', '2026-03'],
    bars: [6, 0, 7],
  });
  expect(salesOf(rows, '2026-06-01').bars).toEqual([6, 0, 7, 9, 0]);
});

it('a sale taken back never was', () => {
  const rows = [
    sold('E1', '2026-01-31', 4),
    sold('E2', '2026-02-05', 2),
    sold('E3', '2026-02-06', -2, 'reversed', 'E2'),
  ];
  expect(salesOf(rows, '2026-03-01').bars).toEqual([4, 0]);
});

it('nothing sold yet is no month', () => {
  expect(salesOf([], '2026-03-01')).toEqual({ months: [], bars: [] });
});
