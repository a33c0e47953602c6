import type { Book, Move } from '../book/book.ts';
import { didYouMean, nameKey } from '../kernel/names.ts';
import { live } from '../stock/reversals.ts';
import { type HealthFinding, type Mending, takeBack } from './finding.ts';

/** Reversals that cancel nothing, and so count as moves of their own. */
export function reversalFindings(book: Book, mending: Mending): HealthFinding[] {
  const byEntry = new Map(book.ledger.moves.map((move) => [nameKey(move.entry), move]));
  return live(book.ledger.moves)
    .filter(({ reason }) => reason === 'reversed')
    .map((reversal) => findingOf(book, reversal, byEntry.get(nameKey(reversal.note)), mending));
}

function findingOf(
  book: Book,
  reversal: Move,
  target: Move | undefined,
  mending: Mending,
): HealthFinding {
  const about = reversal.entry;
  if (target === undefined || target === reversal) {
    const entries = book.ledger.moves.map(({ entry }) => entry);
    const what =
      reversal.note === ''
        ? 'names no entry in its Note'
        : `names "${reversal.note}" in its Note, which is no entry.${didYouMean(reversal.note, entries)}`;
    return {
      kind: 'reversal of nothing',
      about,
      says: `Entry ${about} is a reversal and ${what.replace(/\.?$/u, what.endsWith('?') ? '' : '.')} It counts as a correction of its own; put the entry's id in its Note.`,
      repair: undefined,
    };
  }
  const isOpposite =
    target.quantity === -reversal.quantity &&
    nameKey(target.item.name) === nameKey(reversal.item.name);
  if (!isOpposite) {
    return {
      kind: 'reversal of nothing',
      about,
      says: `Entry ${about} takes back ${target.entry}, but not by the same item and quantity, so both still count. Mend it to ${-target.quantity} of ${target.item.name}.`,
      repair: undefined,
    };
  }
  return {
    kind: 'reversed twice',
    about,
    says: `Entry ${about} takes back ${target.entry}, which another reversal has taken back already, so it counts a second time. Take this one back.`,
    repair: {
      says: `Take back entry ${about}.`,
      moves: [takeBack(reversal, mending)],
      batches: [],
    },
  };
}
