import type { Material } from '../../src/domain/book/book.ts';
import { count } from '../../src/domain/kernel/count.ts';
import type { CheckedPoint } from '../../src/domain/reorder/service-check.ts';
import { daysWithout, stockOuts, weeklyLows } from '../../src/domain/reorder/stock-year.ts';
import { linePlot } from '../pictures/line.ts';
import type { Picture } from '../pictures/picture.ts';
import { figure, quantity } from './words.ts';

const QUARTER_DAYS = 91;

/** A simulated year of a material's stock with one reorder point. */
export function yearPicture(
  which: 'usual' | 'own',
  { point, year }: CheckedPoint,
  material: Material,
): Picture {
  const outs = stockOuts(year);
  const missing = daysWithout(year);
  const level = quantity(point, material);
  const says =
    outs.length === 0
      ? `Ordered at ${level}, stock never ran out in this simulated year.`
      : `Ordered at ${level}, stock ran out ${count(outs.length, 'time')} in this simulated year, for ${count(missing, 'day')} in all.`;
  return {
    key: which,
    title: which === 'usual' ? 'A year by the usual formula' : 'A year by your own days',
    says,
    ...linePlot({
      points: year.map((stock, day) => [day, Math.max(stock, 0)]),
      isStepped: true,
      across: 'Month. Stock after each day’s use',
      acrossTicks: [0, 1, 2, 3, 4].map((quarter) => quarter * QUARTER_DAYS),
      acrossText: (day) => String((day / QUARTER_DAYS) * 3),
      upText: figure,
      level: { at: point, text: `order at ${level} or less` },
      ...(outs.length === 0
        ? {}
        : {
            spans: {
              of: outs.map(({ from, to }) => [from, to + 1] as const),
              text: 'out of stock',
            },
          }),
    }),
    headers: ['Week', 'Lowest', 'Missing'],
    rows: weeklyLows(year).map((low, week) => [
      String(week + 1),
      figure(Math.max(low, 0)),
      figure(Math.max(-low, 0)),
    ]),
  };
}
