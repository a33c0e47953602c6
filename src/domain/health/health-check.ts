import type { Book } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { batchFindings } from './batch-findings.ts';
import { type HealthFinding, mender } from './finding.ts';
import { orphanFindings } from './orphan-findings.ts';
import { repeatFindings } from './repeat-findings.ts';
import { lotFindings, stockFindings } from './stock-findings.ts';

/**
 * Looks through a ledger for what no single line can show, each with what is wrong and, where
 * appended lines can mend it, those lines. Repairs stand each on its own: one may put right what
 * another finding says too, so apply one, read the book again and look again.
 */
export function healthCheck(book: Book, today: Day, by: string): HealthFinding[] {
  const mend = mender(book.ledger.columns.entries, today, by);
  return [
    ...orphanFindings(book, mend),
    ...batchFindings(book, mend),
    ...repeatFindings(book, mend),
    ...lotFindings(book, mend),
    ...stockFindings(book, mend),
  ];
}
