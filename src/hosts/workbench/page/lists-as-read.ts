import { DataValidationType, type Injector } from '@univerjs/presets';
import {
  DataValidatorRegistryService,
  ListValidator,
} from '@univerjs/presets/preset-sheets-data-validation';
import { nameKey } from '../../../domain/kernel/names.ts';
import { numberless } from '../../../workbook/column.ts';

/**
 * Marks only what BOOK would refuse: the grid's own lists tell capital letters apart, so that a name which is
 * accepted would keep its red corner.
 */
export function markAsRead(injector: Injector): void {
  const lists = injector
    .get(DataValidatorRegistryService)
    .getValidatorItem(DataValidationType.LIST);
  if (!(lists instanceof ListValidator)) throw new Error('The grid has no lists.');
  const isListed = lists.isValidType.bind(lists);
  lists.isValidType = async (cell, formula, rule) => {
    if (await isListed(cell, formula, rule)) return true;
    const typed = keyIn(rule.formula1)(String(cell.value ?? ''));
    return lists
      .getList(rule, cell.unitId, cell.subUnitId)
      .some((word) => keyIn(rule.formula1)(word) === typed);
  };
}

/** Words of a fixed list may be said of one or of several; names from cells are names as they stand. */
const keyIn = (source: string | undefined): ((word: string) => string) =>
  source?.startsWith('=') === true ? nameKey : numberless;
