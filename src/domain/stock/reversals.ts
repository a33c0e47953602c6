import type { Move } from '../book/book.ts';
import { nameKey } from '../kernel/names.ts';

/** Which moves take each other back. */
export interface Reversals {
  /** Moves that were taken back, and what took them back. */
  readonly cancelled: ReadonlySet<Move>;
  /** Reversals that still stand, though the move they name does not fit them or was taken back already. */
  readonly loose: readonly Move[];
}

/**
 * The moves that still count: a `reversed` move and the move that its Note names cancel each other,
 * so stock and value are exactly as if neither had been. A reversal of a reversal brings the first
 * move back. Of a history cut before its end a reversal that fits no move stays as a plain correction.
 */
export function live(moves: readonly Move[]): Move[] {
  const reversals = moves.filter((move) => move.reason === 'reversed');
  if (reversals.length === 0) return [...moves];
  const wanted = new Set(reversals.map(({ note }) => nameKey(note)));
  const named = moves.filter(({ entry }) => wanted.has(nameKey(entry)));
  const { cancelled } = pairUp(reversals, named);
  return moves.filter((move) => !cancelled.has(move));
}

/** Pairs reversals with the moves that they name; `named` holds at least those. */
export function pairUp(reversals: readonly Move[], named: readonly Move[]): Reversals {
  const byEntry = new Map(named.map((move) => [nameKey(move.entry), move]));
  const targetOf = (reversal: Move): Move | undefined => {
    const target = byEntry.get(nameKey(reversal.note));
    return target !== undefined && fits(reversal, target) ? target : undefined;
  };
  const waitingFor = new Map<Move, number>();
  for (const reversal of reversals) {
    const target = targetOf(reversal);
    if (target !== undefined) waitingFor.set(target, (waitingFor.get(target) ?? 0) + 1);
  }
  const cancelled = new Set<Move>();
  const loose: Move[] = [];
  // Whether a reversal stands is known once all that name it are looked at; a circle never is.
  const ready = reversals.filter((reversal) => !waitingFor.has(reversal)).sort(byTime);
  const seen = new Set<Move>(ready);
  for (let reversal = ready.pop(); reversal !== undefined; reversal = ready.pop()) {
    const target = targetOf(reversal);
    if (!cancelled.has(reversal)) {
      if (target === undefined || cancelled.has(target)) loose.push(reversal);
      else cancelled.add(reversal).add(target);
    }
    if (target === undefined) continue;
    const left = (waitingFor.get(target) ?? 0) - 1;
    waitingFor.set(target, left);
    if (left > 0 || target.reason !== 'reversed') continue;
    seen.add(target);
    ready.push(target);
  }
  return { cancelled, loose: [...loose, ...reversals.filter((each) => !seen.has(each))] };
}

/** Whether a reversal is the opposite of a move, and of no earlier day. */
export const fits = (reversal: Move, target: Move): boolean =>
  target !== reversal &&
  isSameItem(target, reversal) &&
  target.quantity === -reversal.quantity &&
  Math.floor(target.when) <= Math.floor(reversal.when);

export const isSameItem = (a: Move, b: Move): boolean =>
  nameKey(a.item.name) === nameKey(b.item.name);

/** Latest last, to be taken first: of two that name one move the later takes it back. */
const byTime = (a: Move, b: Move): number =>
  a.when - b.when || (nameKey(a.entry) < nameKey(b.entry) ? -1 : 1);
