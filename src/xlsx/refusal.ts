/**
 * A file or a request that this code will not handle, with a sentence for the maker. It travels as
 * an exception inside src/hosts/xlsx and becomes a value at the public doors (read, patch).
 */
export class Refusal extends Error {
  override readonly name = 'Refusal';
}

export interface Refused {
  readonly kind: 'refused';
  readonly sentence: string;
}

/** Runs `work`; a Refusal becomes a value, anything else is a fault in our code and goes on. */
export function refusedOr<T>(work: () => T): T | Refused {
  try {
    return work();
  } catch (error) {
    if (error instanceof Refusal) return { kind: 'refused', sentence: error.message };
    throw error;
  }
}
