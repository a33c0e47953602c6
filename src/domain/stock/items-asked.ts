/**
 * Set only while an answer is worked out; the core's one variable. A book that notes what is looked up in
 * it would be cleaner, but functions find their book by its handle, and what is known of a book is kept
 * under that very object: wrapped, it would need a variable there and find nothing kept.
 */
let noted: Set<string> | undefined;

/** Notes, for whoever is listening, that an item's history was looked at. */
export function noteItem(key: string): void {
  noted?.add(key);
}

/** Works something out, and tells the items whose histories it looked at, by `nameKey`. */
export function withItemsAsked<A>(work: () => A): { answer: A; items: ReadonlySet<string> } {
  const outer = noted;
  const items = new Set<string>();
  noted = items;
  try {
    return { answer: work(), items };
  } finally {
    noted = outer;
    for (const key of items) outer?.add(key);
  }
}
