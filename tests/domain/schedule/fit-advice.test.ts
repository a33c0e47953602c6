import { describe, expect, it } from 'vitest';
import { calendar } from '../../../src/domain/schedule/calendar.ts';
import { bookOf, on, refusal, season } from '../supplies/season-book.ts';
import {
  bricks,
  calendarOf,
  minutesPerDay,
  type Parts,
  rest,
  sentences,
  told,
} from './calendar-of.ts';

describe('a plan that does not fit', () => {
  it('says by how much, and each way that it would fit is one that does', () => {
    const settings = [minutesPerDay(70)];
    const parts = { plan: [bricks(45)], settings };
    // 10 bricks a day on 2 to 5 December leave 5.
    const found = calendarOf(parts, '2026-12-02');
    expect(told(found)).toHaveLength(4);
    expect(found.notices[0]).toMatchObject({ bars: 5, minutes: 45 });
    // 4 days of 12 bricks (80 minutes) are 48; of 11 (75 minutes) 44.
    expect(sentences(found)).toEqual([
      'Plan line P1 does not fit: there is no time for 5 of its 45 bars. It fits with 80 minutes a day, or with Ready by 2026-12-06, or with 40 bars.',
    ]);
    const fits = (changed: Partial<Parts>, bars = 45, readyBy = '2026-12-05'): boolean =>
      calendarOf({ ...parts, plan: [['P1', 'Brick', bars, readyBy]], ...changed }, '2026-12-02')
        .notices.length === 0;
    expect(fits({ settings: [minutesPerDay(80)] })).toBe(true);
    expect(fits({ settings: [minutesPerDay(79)] })).toBe(false);
    expect(fits({}, 45, '2026-12-06')).toBe(true);
    expect(fits({}, 40)).toBe(true);
    expect(fits({}, 41)).toBe(false);
  });

  it('asks for molds where more minutes would not help', () => {
    const molds = [
      ['Tiles', 'tiles', 36, 25, 0, '', ''],
      ['Loaf', 'bars', 6, '', '', 1, 1440],
    ];
    const parts = { plan: [['P1', 'Mosaic', 12, '2026-12-05']], molds };
    expect(sentences(calendarOf(parts, '2026-12-03'))).toEqual([
      'Plan line P1 does not fit: there is no time for 6 of its 12 bars. It fits with 1 more of Loaf, or with Ready by 2026-12-06, or with 6 bars.',
    ]);
  });

  it.each([
    [
      'a bar that takes more than a day has',
      { plan: [bricks(4)], settings: [minutesPerDay(24)] },
      'Plan line P1 does not fit: one bar of Brick takes 25 minutes with its setup, and a day has 24. Raise Minutes per day in Settings.',
    ],
    [
      'no day to work',
      { plan: [bricks(4)], settings: [rest('Mon Tue Wed Thu Fri Sat Sun')] },
      'Plan line P1 does not fit: every day of the week is a rest day in Settings. Leave a day to work.',
    ],
    [
      'a day that is over',
      { plan: [['P1', 'Brick', 4, '2026-11-01']] },
      'Plan line P1 was to be ready by 2026-11-01, before 2026-11-02. Give it a later day or take it out of Plan.',
    ],
    [
      'a design without layers',
      { plan: [['P1', 'Idea', 4, '2026-12-05']] },
      "Plan line P1 can't be planned: Idea has no lines in Layers. Add what one bar is made of.",
    ],
    [
      'no time to dry',
      { plan: [['P1', 'Mosaic', 4, '2026-11-03']] },
      'Plan line P1 does not fit: there is no time for 4 of its 4 bars. It fits with Ready by 2026-11-04.',
    ],
  ])('%s', (_, parts, sentence) => {
    const found = calendarOf(parts);
    expect(found.entries).toEqual([]);
    expect(sentences(found)).toEqual([sentence]);
  });

  it('without a plan says so', () => {
    expect(refusal(calendar(bookOf(season({ plan: [] })), on('2026-11-02')))).toEqual({
      kind: 'not yet',
      sentence: 'Plan has no lines. Add the bars you mean to make and the day they must be ready.',
    });
  });
});
