import { labourMinutes } from '../recipe/labour.ts';
import type { Book, Move } from '../book/book.ts';
import { batchStates } from '../book/words.ts';
import { count } from '../kernel/count.ts';
import { type Exact, exact, sum } from '../kernel/exact.ts';
import { nameKey, nearestName } from '../kernel/names.ts';
import type { NewBatch } from '../ledger/posting.ts';
import { isOfPour, movesByBatch } from '../stock/batch-moves.ts';
import { unclaimedValue } from './batch-findings.ts';
import {
  finding,
  type HealthFinding,
  type Mender,
  type Mending,
  mendingBy,
  type Repair,
  reversalIn,
} from './finding.ts';

/** Moves that name a batch which is not in Batches: its line was lost, mistyped or never written. */
export function orphanFindings(book: Book, mender: Mender): HealthFinding[] {
  return [...movesByBatch(book)]
    .filter(([key, { live }]) => live.length > 0 && !book.batches.has(key))
    .map(([, { live: moves }]) => {
      const batch = moves[0]?.batch ?? '';
      return finding(
        'ledger lines without a batch',
        batch,
        () => sentenceOf(book, batch, moves),
        () => repairOf(book, batch, moves, mendingBy(mender)),
      );
    });
}

function sentenceOf(book: Book, batch: string, moves: readonly Move[]): string {
  const near = nearestName(
    batch,
    [...book.batches.values()].map((known) => known.batch),
  );
  const hint = near === undefined ? '' : ` Is ${near} meant?`;
  return `${count(moves.length, 'ledger line names', 'ledger lines name')} batch ${batch}, which is not in Batches (${moves.map(({ entry }) => entry).join(', ')}).${hint} Add its line, or take these back.`;
}

/** A pour that is whole but for its line gets the line; one written by halves is taken back. */
function repairOf(
  book: Book,
  batch: string,
  moves: readonly Move[],
  mending: Mending,
): Repair | undefined {
  const made = moves.filter(({ reason }) => reason === 'made');
  const designs = new Set(made.map(({ item }) => nameKey(item.name)));
  const isWhole =
    designs.size === 1 &&
    moves.some(({ reason }) => reason === 'used') &&
    unclaimedValue(book, moves.filter(isOfPour))?.isZero() === true;
  if (isWhole) {
    const line = batchLine(batch, moves, made, mending);
    return line === undefined
      ? undefined
      : { says: `Add the line of batch ${batch} to Batches.`, moves: [], batches: [line] };
  }
  // Bars of it that were sold stay sold: only what the pour itself wrote can be taken back.
  if (moves.some(({ reason }) => reason === 'sold')) return undefined;
  return {
    says: `Take back the ${count(moves.length, 'ledger line')} of batch ${batch}, which is not whole.`,
    moves: moves.map((move) => reversalIn(move, mending)),
    batches: [],
  };
}

function batchLine(
  batch: string,
  moves: readonly Move[],
  made: readonly Move[],
  mending: Mending,
): NewBatch | undefined {
  const [first] = made;
  if (first?.item.kind !== 'bars') return undefined;
  const { design } = first.item;
  const bars: Exact = sum(made.map(({ quantity }) => exact(quantity)));
  const poured = Math.min(...moves.map(({ when }) => when));
  return {
    batch,
    poured,
    design: design.name,
    bars,
    good: bars.toNumber(),
    seconds: 0,
    lost: undefined,
    minutes: labourMinutes(design, bars),
    materialCost: sum(made.map(({ value }) => exact(value ?? 0))),
    costPerBar: undefined,
    readyOn: Math.ceil(poured + design.handsOffHours.toNumber() / 24),
    state: batchStates.recorded,
    by: mending.by,
    note: "Health check: line was missing; minutes are the design's own, seconds not known",
  };
}
