/** Why cells show an error: the functions' sentences, kept by cell until the cell answers again. */
export interface Failures {
  /** Keeps the sentence of one function in one cell; undefined once it answers. */
  note(cell: CellKey, functionName: string, sentence: string | undefined): void;
  /** The sentences of that cell, newest last; none when its functions answered. */
  of(cell: CellKey): readonly string[];
}

export interface CellKey {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

/** Makes an empty record of failures. */
export function createFailures(): Failures {
  const byCell = new Map<string, Map<string, string>>();
  return {
    note(cell, functionName, sentence) {
      const key = keyOf(cell);
      const sentences = byCell.get(key) ?? new Map<string, string>();
      sentences.delete(functionName);
      if (sentence !== undefined) sentences.set(functionName, sentence);
      if (sentences.size > 0) byCell.set(key, sentences);
      else byCell.delete(key);
    },
    of: (cell) => [...(byCell.get(keyOf(cell))?.values() ?? [])],
  };
}

const keyOf = (cell: CellKey): string =>
  `${cell.sheetId}!${String(cell.row)}!${String(cell.column)}`;
