import type { Move } from '../book/book.ts';
import { nameKey } from '../kernel/names.ts';

/**
 * The moves that still count: a `reversed` move and the move that its Note names cancel each other,
 * so stock and value are exactly as if neither had been. A reversal of a reversal brings the first
 * move back. A reversal that names no such move stays as a plain correction.
 */
export function live(moves: readonly Move[]): Move[] {
  const reversals = moves.filter((move) => move.reason === 'reversed');
  if (reversals.length === 0) return [...moves];
  const byEntry = new Map(moves.map((move) => [nameKey(move.entry), move]));
  const cancelled = new Set<Move>();
  // Latest first, so that a reversal which was itself taken back cancels nothing.
  reversals.sort((a, b) => b.when - a.when || (nameKey(a.entry) < nameKey(b.entry) ? 1 : -1));
  for (const reversal of reversals) {
    const target = byEntry.get(nameKey(reversal.note));
    if (target === undefined || target === reversal) continue;
    if (cancelled.has(reversal) || cancelled.has(target)) continue;
    if (
      target.quantity !== -reversal.quantity ||
      nameKey(target.item.name) !== nameKey(reversal.item.name)
    )
      continue;
    cancelled.add(reversal);
    cancelled.add(target);
  }
  return moves.filter((move) => !cancelled.has(move));
}
