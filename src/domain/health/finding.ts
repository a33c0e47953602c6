import type { Move } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import type { Exact } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import type { MoveLine, NewBatch, NewMove } from '../ledger/posting.ts';
import { reversalOf } from '../ledger/reversal.ts';

/** What may be wrong with a ledger that reads well line by line. */
export type FindingKind =
  | 'ledger lines without a batch'
  | 'batch without ledger lines'
  | 'batch half undone'
  | 'state not as the ledger says'
  | 'value out is not value in'
  | 'bars not as the batch says'
  | 'stock below zero'
  | 'lot used before it came'
  | 'lot used beyond its quantity'
  | 'ledger line written twice'
  | 'lot written twice';

/** Lines to append that put a finding right. Nothing already written is changed. */
export interface Repair {
  /** What applying it does, for the maker to agree to. */
  readonly says: string;
  readonly moves: readonly MoveLine[];
  readonly batches: readonly NewBatch[];
}

export interface HealthFinding {
  readonly kind: FindingKind;
  /** The batch, lot, item or entry it is about: with the kind it tells this finding from all others. */
  readonly about: string;
  /** What is wrong and what to do. */
  readonly says: string;
  /** Undefined where only the maker can know what happened. */
  readonly repair: Repair | undefined;
}

/** Who mends, and on which day. */
export interface Mender {
  readonly today: Day;
  readonly by: string;
  /** The ledger's entries, by `nameKey`. */
  readonly entries: ReadonlySet<string>;
}

/** One repair being made. */
export interface Mending extends Omit<Mender, 'entries'> {
  /** An Entry not yet in the ledger, made from the one it mends: the same on every machine. */
  readonly entryFor: (cause: string) => string;
}

/** Mends in the name of somebody. */
export const mender = (entries: readonly string[], today: Day, by: string): Mender => ({
  today,
  by,
  entries: new Set(entries.map(nameKey)),
});

/**
 * A finding whose words and repair are worked out when they are first asked for: of thousands only
 * the first few are ever looked at. Each repair stands on its own, so its new ids hang on no other's.
 */
export function finding(
  kind: FindingKind,
  about: string,
  says: () => string,
  repair: () => Repair | undefined,
): HealthFinding {
  const words = once(says);
  const lines = once(repair);
  return {
    kind,
    about,
    get says() {
      return words();
    },
    get repair() {
      return lines();
    },
  };
}

function once<A>(work: () => A): () => A {
  let known: { readonly answer: A } | undefined;
  return () => (known ??= { answer: work() }).answer;
}

/** Begins a repair: new ids keep clear of those in the ledger and of one another. */
export function mendingBy({ today, by, entries }: Mender): Mending {
  const added = new Set<string>();
  const isTaken = (entry: string): boolean =>
    entries.has(nameKey(entry)) || added.has(nameKey(entry));
  return {
    today,
    by,
    entryFor: (cause) => {
      let entry = cause;
      for (let number = 2; isTaken(entry); number += 1) entry = `${cause}.${number}`;
      added.add(nameKey(entry));
      return entry;
    },
  };
}

/** The move that takes another back, so that neither counts. */
export function reversalIn(move: Move, { entryFor, today, by }: Mending): NewMove {
  const reversal = reversalOf(move, today, by);
  return { ...reversal, entry: entryFor(reversal.entry) };
}

/** A quantity as a sentence has it: 15 of a thing that is counted, 15 g of one that is weighed. */
export const inWords = (quantity: Exact | number, unit: string): string =>
  unit === 'each' ? quantity.toString() : `${quantity.toString()} ${unit}`;
