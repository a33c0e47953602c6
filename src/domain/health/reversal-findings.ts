import type { Book, Move } from '../book/book.ts';
import { didYouMean, nameKey } from '../kernel/names.ts';
import { historyOf } from '../stock/ledger-index.ts';
import { live } from '../stock/reversals.ts';
import { finding, type HealthFinding, type Mender, mendingBy, takeBack } from './finding.ts';

/** Reversals that cancel nothing, and so count as moves of their own. */
export function reversalFindings(book: Book, mender: Mender): HealthFinding[] {
  const { moves } = book.ledger;
  const lost = live(moves).filter(({ reason }) => reason === 'reversed');
  if (lost.length === 0) return [];
  const byEntry = new Map(moves.map((move) => [nameKey(move.entry), move]));
  return lost.map((reversal) =>
    findingOf(book, reversal, byEntry.get(nameKey(reversal.note)), mender),
  );
}

function findingOf(
  book: Book,
  reversal: Move,
  target: Move | undefined,
  mender: Mender,
): HealthFinding {
  const about = reversal.entry;
  if (target === undefined || target === reversal) {
    return finding(
      'reversal of nothing',
      about,
      () => namesNothing(book, reversal),
      () => undefined,
    );
  }
  const isOpposite =
    target.quantity === -reversal.quantity &&
    nameKey(target.item.name) === nameKey(reversal.item.name);
  if (!isOpposite) {
    return finding(
      'reversal of nothing',
      about,
      () =>
        `Entry ${about} takes back ${target.entry}, but not by the same item and quantity, so both still count. Mend it to ${-target.quantity} of ${target.item.name}.`,
      () => undefined,
    );
  }
  return finding(
    'reversed twice',
    about,
    () =>
      `Entry ${about} takes back ${target.entry}, which another reversal has taken back already, so it counts a second time. Take this one back.`,
    () => ({
      says: `Take back entry ${about}.`,
      moves: [takeBack(reversal, mendingBy(mender))],
      batches: [],
    }),
  );
}

function namesNothing(book: Book, { entry, note, item }: Move): string {
  const entries = historyOf(book, item).moves.map((move) => move.entry);
  const what =
    note === ''
      ? 'names no entry in its Note'
      : `names "${note}" in its Note, which is no entry.${didYouMean(note, entries)}`;
  return `Entry ${entry} is a reversal and ${what.replace(/\.?$/u, what.endsWith('?') ? '' : '.')} It counts as a correction of its own; put the entry's id in its Note.`;
}
