import type { ChangeCase } from './change-case.ts';
import { cells, cleared, refused } from './cells-set.ts';
import { added, shared, there } from './rows-added.ts';

/** What a change means, case by case. */
export const changeCases: readonly ChangeCase[] = [
  ...added,
  ...there,
  ...cells,
  ...cleared,
  ...shared,
  ...refused,
];
