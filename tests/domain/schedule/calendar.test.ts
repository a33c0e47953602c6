import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isoDate } from '../../../src/domain/kernel/day.ts';
import { calendar } from '../../../src/domain/schedule/calendar.ts';
import { weekday } from '../../../src/domain/schedule/work-days.ts';
import { bookOf, on, season, sound } from '../supplies/season-book.ts';
import { bricks, calendarOf, minutesPerDay, rest, told } from './calendar-of.ts';

describe('one line', () => {
  it('without limits is poured on the last day, all at once', () => {
    // 20 minutes of setup and 5 a bar.
    expect(told(calendarOf({ plan: [bricks(12)] }))).toEqual(['2026-12-05 pour P1 12 80']);
  });

  it('dries before Ready by', () => {
    // 36 hours hands-off are two days.
    const found = calendarOf({ plan: [['P1', 'Mosaic', 6, '2026-12-05']] });
    expect(told(found)).toEqual(['2026-12-03 pour P1 6 90']);
    expect(isoDate(found.entries[0]?.batch.readyOn ?? 0)).toBe('2026-12-05');
  });

  it('skips rest days and takes the latest days, in batches as even as can be', () => {
    // 70 minutes are 10 bricks, so 25 are three batches.
    const settings = [minutesPerDay(70), rest('Fri, Sat')];
    expect(told(calendarOf({ plan: [bricks(25)], settings }))).toEqual([
      '2026-12-01 pour P1 8 60',
      '2026-12-02 pour P1 8 60',
      '2026-12-03 pour P1 9 65',
    ]);
  });

  it('pours no more bars a day than the bar mold takes', () => {
    // Two sections of 6, one fill a day each since 90 minutes set once in 100.
    const molds = [
      ['Tiles', 'tiles', 36, 25, 0, '', ''],
      ['Loaf', 'bars', 6, '', '', 2, 90],
    ];
    const plan = [['P1', 'Mosaic', 14, '2026-12-05']];
    expect(told(calendarOf({ plan, molds, settings: [minutesPerDay(150)] }))).toEqual([
      '2026-12-02 pour P1 7 100',
      '2026-12-03 pour P1 7 100',
    ]);
    // Set twice in 180 minutes, the molds take 24 and the minutes 15.
    expect(told(calendarOf({ plan, molds, settings: [minutesPerDay(180)] }))).toEqual([
      '2026-12-03 pour P1 14 170',
    ]);
  });

  it('unmolds on a later day what sets overnight', () => {
    const molds = [
      ['Tiles', 'tiles', 36, 25, 0, '', ''],
      ['Loaf', 'bars', 6, '', '', '', 600],
    ];
    const plan = [['P1', 'Mosaic', 6, '2026-12-05']];
    const settings = [minutesPerDay(100), rest('Fri')];
    expect(told(calendarOf({ plan, molds, settings }))).toEqual([
      '2026-12-03 pour P1 6 90',
      '2026-12-05 unmold P1 6 0',
    ]);
  });

  it('keeps a mold that sets for two days out of the next day', () => {
    const molds = [
      ['Tiles', 'tiles', 36, 25, 0, '', ''],
      ['Loaf', 'bars', 6, '', '', 1, 2880],
    ];
    const plan = [['P1', 'Mosaic', 12, '2026-12-05']];
    expect(told(calendarOf({ plan, molds }))).toEqual([
      '2026-12-01 pour P1 6 90',
      '2026-12-03 unmold P1 6 0',
      '2026-12-03 pour P1 6 90',
      '2026-12-05 unmold P1 6 0',
    ]);
  });

  it('is out of the mold by Ready by even where nothing has to dry', () => {
    const molds = [
      ['Loaf', 'bars', 6, '', '', '', 600],
      ['Tiles', 'tiles', 36, 25, 0, '', ''],
    ];
    const plan = [['P1', 'Slab', 6, '2026-12-05']];
    expect(told(calendarOf({ plan, molds, settings: [minutesPerDay(100)] }))).toEqual([
      '2026-12-04 pour P1 6 90',
      '2026-12-05 unmold P1 6 0',
    ]);
  });

  it('shapes tiles on the days before where the sections are too few for one day', () => {
    // One section, set overnight: one fill a day. Two mosaics take 48 tiles, two fills; one would take one.
    const molds = [
      ['Tiles', 'tiles', 12, 25, 0, 1, 600],
      ['Loaf', 'bars', 6, '', '', '', ''],
    ];
    const plan = [['P1', 'Mosaic', 1, '2026-12-05']];
    const settings = [minutesPerDay(60)];
    // 24 tiles are two fills; 10 minutes of labour are shared by two fills and the pour, beside 30 of setup.
    const found = calendarOf({ plan, molds, settings });
    expect(found.entries.map(({ day, task }) => `${isoDate(day)} ${task}`)).toEqual([
      '2026-12-02 shape',
      '2026-12-03 shape',
      '2026-12-03 pour',
    ]);
    expect(found.entries.reduce((sum, { minutes }) => sum + minutes, 0)).toBeCloseTo(40, 9);
  });

  it('makes only what is not on hand', () => {
    const made = (bars: number) => [['E1', '2026-10-02', 'made', 'Brick', bars, '', 5, '']];
    expect(told(calendarOf({ plan: [bricks(12)], moves: made(4) }))).toEqual([
      '2026-12-05 pour P1 8 60',
    ]);
    const found = calendarOf({ plan: [bricks(12)], moves: made(20) });
    expect(told(found)).toEqual([]);
    expect(found.covered.map(({ sentence }) => sentence)).toEqual([
      'Nothing to pour for plan line P1: its bars are on hand.',
    ]);
  });
});

describe('several lines', () => {
  const plan = [bricks(10), ['P2', 'Brick', 6, '2026-12-05']];

  it('of one design and day are one batch, in as few batches as the minutes allow', () => {
    expect(told(calendarOf({ plan, settings: [minutesPerDay(125)] }))).toEqual([
      '2026-12-05 pour P1+P2 16 100',
    ]);
    // 14 bricks at most: two batches, as even as can be.
    expect(told(calendarOf({ plan, settings: [minutesPerDay(90)] }))).toEqual([
      '2026-12-04 pour P1 8 60',
      '2026-12-05 pour P1+P2 8 60',
    ]);
  });

  it('of later days are pulled into an earlier batch where that saves one', () => {
    const months = [bricks(10), ['P2', 'Brick', 6, '2027-01-05'], ['P3', 'Brick', 9, '2027-02-05']];
    expect(told(calendarOf({ plan: months, settings: [minutesPerDay(150)] }))).toEqual([
      '2026-12-05 pour P1+P2+P3 25 145',
    ]);
    // 24 at most: two batches however they are cut, so the second is poured as late as it can be.
    expect(told(calendarOf({ plan: months, settings: [minutesPerDay(140)] }))).toEqual([
      '2026-12-05 pour P1+P2 16 100',
      '2027-02-05 pour P3 9 65',
    ]);
  });

  it('share the sections of a mold by colour: half a tray and half a tray are one fill', () => {
    const molds = [
      ['Tiles', 'tiles', 48, 25, 0, 1, 600],
      ['Loaf', 'bars', 6, '', '', '', ''],
    ];
    const halves = [
      ['P1', 'Mosaic', 1, '2026-12-05'],
      ['P2', 'Twin', 1, '2026-12-05'],
    ];
    expect(told(calendarOf({ plan: halves, molds, settings: [minutesPerDay(100)] }))).toEqual([
      '2026-12-03 pour P1 1 40',
      '2026-12-03 pour P2 1 40',
    ]);
  });
});

it('says what it had to take as no limit', () => {
  expect(calendarOf({ plan: [['P1', 'Mosaic', 4, '2026-12-05']] }).assumptions).toEqual([
    'Minutes per day is not set in Settings, so no day is too full. Fill it in to plan by it.',
    'Sections of Tiles is blank in Molds, so that mold is no limit.',
    'Sections of Loaf is blank in Molds, so that mold is no limit.',
  ]);
});

describe('laws', () => {
  const line = fc.tuple(
    fc.constantFrom('Brick', 'Mosaic', 'Slab'),
    fc.integer({ min: 1, max: 40 }),
    fc.integer({ min: 0, max: 40 }),
  );
  const molds = fc.tuple(fc.integer({ min: 1, max: 6 }), fc.constantFrom(20, 45, 120, 700));

  it('never works on rest days, beyond a day’s minutes, before today or too late to dry', () => {
    const from = on('2026-11-02');
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 20, max: 400 }),
        fc.subarray(['Mon', 'Wed', 'Sat', 'Sun']),
        molds,
        (lines, minutes, days, [sections, set]) => {
          const book = bookOf(
            season({
              plan: lines.map(([design, bars, day], i) => [`P${i}`, design, bars, from + day]),
              settings: [minutesPerDay(minutes), rest(days.join(' '))],
              molds: [
                ['Tiles', 'tiles', 12, 25, 0, sections, set],
                ['Loaf', 'bars', 6, '', '', sections, set],
              ],
            }),
          );
          const { entries, notices } = sound(calendar(book, from));
          const byDay = new Map<number, number>();
          const made = new Map<string, number>();
          for (const { day, minutes: work, batch, task } of entries) {
            expect(book.settings.restDays).not.toContain(weekday(day));
            expect(day).toBeGreaterThanOrEqual(from);
            byDay.set(day, (byDay.get(day) ?? 0) + work);
            if (task !== 'pour') continue;
            expect(batch.lines.reduce((sum, { bars }) => sum + bars, 0)).toBe(batch.bars);
            for (const { line: planned, bars } of batch.lines) {
              expect(planned.design).toBe(batch.design);
              expect(batch.readyOn).toBeLessThanOrEqual(planned.readyBy);
              made.set(planned.planLine, (made.get(planned.planLine) ?? 0) + bars);
            }
          }
          for (const work of byDay.values()) expect(work).toBeLessThanOrEqual(minutes + 1e-6);
          // No bar is lost: what is not poured has its notice.
          for (const { line: planned, bars } of notices)
            made.set(planned.planLine, (made.get(planned.planLine) ?? 0) + bars);
          for (const planned of book.plan) expect(made.get(planned.planLine)).toBe(planned.bars);
        },
      ),
      { numRuns: 60 },
    );
  });
});
