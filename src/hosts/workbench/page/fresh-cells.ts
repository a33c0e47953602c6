import { FORMULA_REF_TO_ARRAY_CACHE } from '@univerjs/preset-sheets-core';

/**
 * Keeps the engine from remembering single cells while it works formulas out. A colouring rule may look at
 * a cell before its formula has answered; what it saw would then be handed to every formula that asks later.
 */
export function rememberNoSingleCells(): void {
  const remember = FORMULA_REF_TO_ARRAY_CACHE.set.bind(FORMULA_REF_TO_ARRAY_CACHE);
  FORMULA_REF_TO_ARRAY_CACHE.set = (range, cells) => {
    if (cells.getRowCount() > 1 || cells.getColumnCount() > 1) remember(range, cells);
  };
}
