import { describe, expect, it } from 'vitest';
import { lotsIn, recentDeliveries } from '../../../taskpane/receive/recent-deliveries.ts';
import { bookOf } from '../book-of.ts';
import { rowsOf, smallWorkshop } from '../small-workshop.ts';

type Line = readonly [lot: string, on: string, supplier: string];

/** The workshop with these lots alone. */
const listed = (...lots: readonly Line[]) =>
  recentDeliveries(
    bookOf(
      smallWorkshop.map((table) =>
        table.name === 'Lots'
          ? {
              ...table,
              headers: [...table.headers, 'Supplier'],
              rows: rowsOf(
                lots.map(([lot, on, supplier]) => `${lot}|Clear base|${on}|5|1|||${supplier}`),
              ),
            }
          : table,
      ),
    ),
  );
const idsOf = (...lots: readonly Line[]) => listed(...lots).map(({ id }) => id);

describe('recentDeliveries', () => {
  it('are what came on one day from one supplier, newest first', () => {
    const entries = listed(
      ['A', '2026-11-01', 'Cove'],
      ['B', '2026-11-03', 'Cove'],
      ['C', '2026-11-03', 'Marram'],
      ['D', '2026-11-03', 'cove'],
    );
    expect(entries.map(({ id, name }) => [name, id])).toEqual([
      ['Marram', 'C'],
      ['Cove', 'B, D'],
      ['Cove', 'A'],
    ]);
    expect(lotsIn(entries[1]?.target ?? '')).toEqual(['B', 'D']);
    expect(entries[1]?.details).toBe('3 Nov 2026 · Clear base 5 g, Clear base 5 g');
  });

  it('keeps two of one day and supplier apart by the ids that lots are named after', () => {
    const [one, two] = ['R20261103-AAAAAAAAAA', 'R20261103-BBBBBBBBBB'];
    const day = '2026-11-03';
    expect(
      idsOf(
        [`${one}.01`, day, 'Cove'],
        [`${two}.01`, day, 'Cove'],
        [`${one}.02`, day, 'Cove'],
        ['X', day, 'Cove'],
      ),
    ).toEqual(['X', `${two}.01`, `${one}.01, ${one}.02`]);
    expect(idsOf([`${one}.01`, day, ''], ['X', day, ''])).toEqual([`${one}.01, X`]);
  });

  it('takes lots that nobody says the supplier of one by one', () => {
    expect(idsOf(['A', '2026-11-03', ''], ['B', '2026-11-03', ''])).toEqual(['B', 'A']);
  });
});
