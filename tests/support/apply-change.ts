import type { Change } from '../../src/workbook/port.ts';
import { withChange } from '../../src/workbook/write/with-change.ts';
import { tableData, type Tables } from './small-book.ts';

/** The tables once a change is written, worked out without any host; throws where it is refused. */
export function applyChange(tables: Tables, change: Change): Tables {
  const { plan, tables: next } = withChange(tableData(tables), change);
  if (plan.kind === 'refused') throw new Error(plan.sentence);
  return Object.fromEntries(next.map(({ name, headers, rows }) => [name, [headers, ...rows]]));
}
