import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Tables } from '../../support/small-book.ts';
import { randomLedger } from '../trace/random-ledger.ts';
import {
  check,
  repaired,
  wholeLedger,
  withoutLoose,
  withoutLots,
  withoutMove,
  withoutRow,
} from './ledgers.ts';

describe('healthCheck on ledgers that lost lines', () => {
  it('answers on ledgers with lines lost at random; each repair reads as a book, its finding gone', () => {
    let repairs = 0;
    const lost = fc.array(fc.tuple(fc.constantFrom('LedgerLines', 'Batches', 'Lots'), fc.nat(40)), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(randomLedger, lost, (ledger, drops) => {
        const tables = withoutLoose(drops.reduce<Tables>(withoutRow, withoutLots(ledger.tables)));
        for (const finding of check(tables)) {
          expect(finding.says).toMatch(/\.$/);
          if (finding.repair === undefined) continue;
          repairs += 1;
          const same = check(repaired(tables, finding.repair)).filter(
            ({ kind, about }) => kind === finding.kind && about === finding.about,
          );
          expect(same, finding.says).toEqual([]);
        }
      }),
      // One seed, so that the count of repairs below does not hang on luck.
      { numRuns: 150, seed: 2026 },
    );
    expect(repairs).toBeGreaterThan(100);
  });

  it('finds any one move that is lost from a whole batch', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3 }), (row) => {
        expect(check(withoutMove(withoutMove(wholeLedger, 4), row)).length).toBeGreaterThan(0);
      }),
    );
  });
});
