import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cell, TableData } from '../../../src/workbook/port.ts';
import { mergeCopies } from '../../support/merged-copies.ts';

const HEADERS = ['Entry', 'When', 'Reason', 'Material', 'Quantity', 'Note'];

const moves = (
  rows: readonly (readonly Cell[])[],
  headers: readonly string[] = HEADERS,
): TableData => ({
  name: 'Ledger',
  headers,
  rows,
});

const row = (entry: string, quantity: number, note = ''): Cell[] => [
  entry,
  46000,
  'used',
  'Clear',
  -quantity,
  note,
];

describe('compareCopies, all rows kept', () => {
  it('takes the rows of both copies', () => {
    const merged = mergeCopies(
      [moves([row('E1', 5), row('E2', 6)])],
      [moves([row('E1', 5), row('E3', 7)])],
    );
    expect(merged.tables[0]?.rows.map((cells) => cells[0])).toEqual(['E1', 'E2', 'E3']);
    expect(merged.conflicts).toEqual([]);
  });

  it('reports a row that differs, with both versions', () => {
    const merged = mergeCopies([moves([row('E1', 5)])], [moves([row('e1', 8, 'mine')])]);
    expect(merged.tables[0]?.rows).toHaveLength(1);
    expect(merged.conflicts).toHaveLength(1);
    const [conflict] = merged.conflicts;
    expect(conflict?.differs).toEqual(['Entry', 'Quantity', 'Note']);
    expect(
      [conflict?.kept[0]?.get('quantity'), conflict?.setAside[0]?.get('quantity')].sort(),
    ).toEqual([-5, -8]);
  });

  it("keeps each copy's own columns, and finds columns in any order", () => {
    const wide = moves([['x', ...row('E2', 1)]], ['Shelf', ...HEADERS]);
    const merged = mergeCopies([moves([row('E1', 5)])], [wide]);
    expect(merged.tables[0]?.headers).toEqual([...HEADERS, 'Shelf']);
    expect(merged.tables[0]?.rows.map((cells) => cells.at(-1))).toEqual(['', 'x']);
  });

  it('keeps undone over posted', () => {
    const batch = (state: string): TableData => ({
      name: 'Pours',
      headers: ['Batch', 'Poured', 'Design', 'Bars', 'State'],
      rows: [['B1', 46000, 'Tide Pool', 12, state]],
    });
    expect(mergeCopies([batch('posted')], [batch('undone')]).tables[0]?.rows[0]?.[4]).toBe(
      'undone',
    );
  });

  const anyRow = fc
    .tuple(
      fc.integer({ min: 1, max: 8 }),
      fc.integer({ min: 1, max: 3 }),
      fc.constantFrom('', 'a', 'b'),
    )
    .map(([id, quantity, note]) => row(`E${id}`, quantity, note));
  const anyCopy = fc
    .uniqueArray(anyRow, { maxLength: 8, selector: (cells) => cells[0] })
    .map((rows) => [moves(rows)]);
  const seen = (copies: ReturnType<typeof mergeCopies>) => JSON.stringify(copies.tables);

  it('gives the same whichever side is first, and merging again changes nothing', () => {
    fc.assert(
      fc.property(anyCopy, anyCopy, (a, b) => {
        const merged = mergeCopies(a, b);
        expect(seen(mergeCopies(b, a))).toBe(seen(merged));
        expect(seen(mergeCopies(merged.tables, b))).toBe(seen(merged));
        expect(seen(mergeCopies(merged.tables, a))).toBe(seen(merged));
        expect(seen(mergeCopies(merged.tables, merged.tables))).toBe(seen(merged));
      }),
    );
  });

  it('drops nothing: every row of either copy is in the result or beside it', () => {
    fc.assert(
      fc.property(anyCopy, anyCopy, (a, b) => {
        const { tables, conflicts } = mergeCopies(a, b);
        const kept = [
          ...(tables[0]?.rows ?? []).map((cells) => JSON.stringify(cells)),
          ...conflicts.map(({ setAside }) => JSON.stringify([...(setAside[0]?.values() ?? [])])),
        ];
        for (const cells of [...a, ...b].flatMap((table) => table.rows))
          expect(kept).toContain(JSON.stringify(cells));
      }),
    );
  });
});
