import { DataValidationErrorStyle, DataValidationRenderMode } from '@univerjs/presets';
import type { ListValidationImage, RangeImage, SheetImage } from '../../../xlsx/image.ts';
import { absolute } from './absolute-range.ts';

/** Rows that a list reaches below its table, so that names typed on stand in it at once. */
const ROOM_ROWS = 200;

/** A drop-down as the grid's own rule; a choice of yes or no becomes a box to tick. */
export function listRule(list: ListValidationImage, uid: string, sheets: readonly SheetImage[]) {
  const { choices } = list;
  return {
    uid,
    ranges: [{ ...list.range }],
    allowBlank: true,
    // A hint only: the functions say themselves what they cannot read, with the nearest name.
    errorStyle: DataValidationErrorStyle.WARNING,
    showErrorMessage: true,
    error: notListed(choices),
    ...(isYesOrNo(choices)
      ? { type: 'checkbox', formula1: 'TRUE', formula2: 'FALSE' }
      : {
          type: 'list',
          formula1:
            'sheet' in choices
              ? `=${absolute(choices.sheet, withRoom(choices, sheets))}`
              : choices.join(','),
          renderMode: DataValidationRenderMode.ARROW,
          showDropDown: true,
        }),
  };
}

const isYesOrNo = (choices: ListValidationImage['choices']): boolean =>
  !('sheet' in choices) &&
  choices
    .map((choice) => choice.toUpperCase())
    .sort()
    .join() === 'FALSE,TRUE';

type Source = Extract<ListValidationImage['choices'], { readonly sheet: string }>;

/** A whole column of a table reaches further: the table grows. */
function withRoom({ sheet, range }: Source, sheets: readonly SheetImage[]): RangeImage {
  const tables = sheets.find(({ name }) => name === sheet)?.tables ?? [];
  const isColumn = tables.some(
    ({ range: table }) =>
      range.startRow === table.startRow + 1 &&
      range.endRow === table.endRow &&
      range.startColumn >= table.startColumn &&
      range.endColumn <= table.endColumn,
  );
  return isColumn ? { ...range, endRow: range.endRow + ROOM_ROWS } : range;
}

const notListed = (choices: ListValidationImage['choices']): string =>
  'sheet' in choices
    ? 'This name is not in the list yet. Pick one that is, or add it where the list comes from.'
    : `Pick one of: ${choices.join(', ')}.`;
