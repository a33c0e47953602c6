import { DataValidationErrorStyle, DataValidationRenderMode } from '@univerjs/presets';
import type { ListValidationImage } from '../../xlsx/image.ts';
import { absolute } from './places.ts';

/** A drop-down as the grid's own rule; a choice of yes or no becomes a box to tick. */
export function listRule(list: ListValidationImage, uid: string) {
  const { choices } = list;
  return {
    uid,
    ranges: [{ ...list.range }],
    allowBlank: true,
    // A hint only: the functions say themselves what they cannot read, with the nearest name.
    errorStyle: DataValidationErrorStyle.WARNING,
    ...(isYesOrNo(choices)
      ? { type: 'checkbox', formula1: 'TRUE', formula2: 'FALSE' }
      : {
          type: 'list',
          formula1:
            'sheet' in choices ? `=${absolute(choices.sheet, choices.range)}` : choices.join(','),
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
