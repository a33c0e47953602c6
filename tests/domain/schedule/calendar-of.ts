import { isoDate } from '../../../src/domain/kernel/day.ts';
import { type Calendar, calendar } from '../../../src/domain/schedule/calendar.ts';
import type { Cell } from '../../../src/workbook/port.ts';
import { bookOf, on, season, sound } from '../supplies/season-book.ts';

export type Parts = Parameters<typeof season>[0];
export const calendarOf = (parts: Parts, from = '2026-11-02'): Calendar =>
  sound(calendar(bookOf(season(parts)), on(from)));

/** The entries as "day task plan lines bars minutes", and the notices. */
export const told = ({ entries }: Calendar): string[] =>
  entries.map(({ day, task, batch, minutes }) => {
    const lines = batch.lines.map(({ line }) => line.planLine).join('+');
    return [isoDate(day), task, lines, batch.bars, minutes].join(' ');
  });
export const sentences = ({ notices }: Calendar): string[] =>
  notices.map(({ sentence }) => sentence);

export const minutesPerDay = (minutes: number): Cell[] => ['Minutes per day', minutes, ''];
export const rest = (days: string): Cell[] => ['Rest days', days, ''];
/** 2026-12-05 is a Saturday. */
export const bricks = (bars: number): Cell[] => ['P1', 'Brick', bars, '2026-12-05'];
