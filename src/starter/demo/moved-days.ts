import type { Day } from '../../domain/kernel/day.ts';
import type { TableData } from '../../workbook/port.ts';
import { tables } from '../../workbook/schema.ts';
import { demoDay } from './season.ts';

const WEEK_DAYS = 7;

/**
 * A day of the demo where its season is about to begin on `today`: the day that it was written for then
 * lies no later than `today` and less than a week before. All days are moved by the same whole weeks, so
 * that fairs stay on their Saturdays and no pour falls on a day of rest.
 */
export const movedTo = (today: Day, day: Day): Day =>
  day + WEEK_DAYS * Math.floor((today - demoDay) / WEEK_DAYS);

/** The demo's tables with every date moved so; nothing else in them tells a day. */
export function tablesMovedTo(today: Day, data: readonly TableData[]): readonly TableData[] {
  return data.map((table) => {
    const dates = dateHeaders(table.name);
    const isDate = table.headers.map((header) => dates.has(header));
    return {
      ...table,
      rows: table.rows.map((row) =>
        row.map((cell, at) =>
          isDate[at] === true && typeof cell === 'number' ? movedTo(today, cell) : cell,
        ),
      ),
    };
  });
}

/** The headers of a table's columns that hold dates. */
function dateHeaders(name: string): ReadonlySet<string> {
  const spec = Object.values(tables).find((each) => each.name === name);
  const columns = Object.values(spec?.columns ?? {});
  return new Set(columns.filter(({ format }) => format === 'date').map(({ header }) => header));
}
