import { describe, expect, it } from 'vitest';
import { dayOf, isoDate, readDay } from '../../../src/domain/kernel/day.ts';

describe('dates', () => {
  it.each([
    // Excel's own serial numbers, date system of 1900: documented examples of its DATE and DATEVALUE.
    ['2008-01-01', 39_448],
    ['2011-08-22', 40_777],
    ['1900-03-01', 61],
    ['9999-12-31', 2_958_465],
    ['2024-02-29', 45_351],
    ['2024-05-01T12:00', 45_413.5],
    ['2024-05-01 06:00:00', 45_413.25],
    ['2024-05-01T06:00:00.000Z', 45_413.25],
    ['2024-05-01T18:00+05:30', 45_413.75],
    [45_413, 45_413],
    [45_413.75, 45_413.75],
    [2_958_465.9, 2_958_465.9],
  ])('%j is day %d', (cell, day) => {
    expect(readDay(cell)).toBe(day);
  });

  it.each([
    '',
    'soon',
    '5/1/2024',
    '2024-5-1',
    '2024-02-30',
    '2023-02-29',
    '2024-13-01',
    '2024-00-10',
    '0024-05-01',
    '1900-02-28',
    '2024-05-01T24:00',
    '2024-05-01T12:60',
    '2024-05-01T12:00:60',
    '2024-05-01T12:00:5',
    '2024-05-01T12:00.5',
    '2024-05-01T12:00+1',
    '2024-05-01+01:00',
    0,
    60,
    -1,
    2_958_466,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    true,
  ])('%j is none', (cell) => {
    expect(readDay(cell)).toBeUndefined();
  });

  it('are written as they are read', () => {
    for (let day = 61; day < 2_958_466; day += 997) {
      const iso = isoDate(day);
      expect(readDay(iso)).toBe(day);
      const [year = 0, month = 0, date = 0] = iso.split('-').map(Number);
      expect(dayOf(year, month, date)).toBe(day);
    }
  });
});
