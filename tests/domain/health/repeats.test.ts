import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../src/workbook/port.ts';
import { withCell, withRows } from '../../support/small-book.ts';
import { check, kinds, wholeLedger } from './ledgers.ts';

const ids = ['M', 'M.2', 'm.3', 'M.2.4', 'M.x', 'K', 'K.02', 'K.2.2', 'M2', 'K.'];

/** Lines of a few kinds, so that many say the same. */
const anyLines = fc.uniqueArray(
  fc.record({
    entry: fc.constantFrom(...ids),
    reason: fc.constantFrom('used', 'wasted', 'counted'),
    quantity: fc.constantFrom(-1, -2),
    batch: fc.constantFrom('', 'B1', 'b1'),
  }),
  { selector: ({ entry }) => entry, maxLength: ids.length },
);

type Line = typeof anyLines extends fc.Arbitrary<(infer L)[]> ? L : never;

/** The rule as a person would go through the lines: each against all before it. */
function repeatedBy(lines: readonly Line[]): string[] {
  const kept: Line[] = [];
  return lines.flatMap((line) => {
    const isRepeat = kept.some((first) => {
      const isAlike =
        first.reason === line.reason &&
        first.quantity === line.quantity &&
        first.batch.toLowerCase() === line.batch.toLowerCase();
      const [one, other] = [first.entry.toLowerCase(), line.entry.toLowerCase()];
      const isNumbered = other.startsWith(`${one}.`) && /^\d+$/.test(other.slice(one.length + 1));
      return isAlike && (isNumbered || (line.batch !== '' && line.reason === 'used'));
    });
    if (!isRepeat) kept.push(line);
    return isRepeat ? [line.entry] : [];
  });
}

describe('healthCheck on lines that stand twice', () => {
  it('finds just those that the rule says, whatever the order and the ids', () => {
    fc.assert(
      fc.property(anyLines, (lines) => {
        const rows = lines.map(({ entry, reason, quantity, batch }): Cell[] => [
          entry,
          '2024-02-20',
          reason,
          'Clear base',
          quantity,
          '',
          -0.1,
          batch,
          '',
          '',
        ]);
        const found = check(withRows(wholeLedger, 'LedgerLines', ...rows))
          .filter(({ kind }) => kind === 'ledger line written twice')
          .map(({ about }) => about);
        expect(found).toEqual(repeatedBy(lines));
      }),
    );
  });

  it('asks for no words and no repair before they are looked at, and for each once', () => {
    const tables = withCell(wholeLedger, 'Batches', 1, 'Batch', 'B9');
    const [first] = check(tables);
    expect(kinds(tables)[0]).toEqual(['ledger lines without a batch', 'B1']);
    expect(first?.repair).toBe(first?.repair);
    expect(first?.says).toContain('batch B1, which is not in Batches');
  });
});
