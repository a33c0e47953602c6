/** Stands in for the grid's hyphenation patterns, 5 MB of them: cells are never hyphenated. */
export {};
