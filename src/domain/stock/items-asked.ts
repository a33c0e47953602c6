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
