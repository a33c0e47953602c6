import { BooleanNumber } from '@univerjs/presets';
import {
  CFRuleType,
  CFSubRuleType,
  type IConditionFormattingRule,
} from '@univerjs/presets/preset-sheets-conditional-formatting';
import type { HighlightImage, SheetImage } from '../../../xlsx/image.ts';

/** A sheet's highlights as the grid's own rules, the first to win at the head. */
export const highlightRules = ({ highlights }: SheetImage): readonly IConditionFormattingRule[] =>
  highlights.map((highlight, index) => ruleOf(highlight, `highlight-${String(index)}`));

const ruleOf = (
  { ranges, formula, look }: HighlightImage,
  cfId: string,
): IConditionFormattingRule => ({
  cfId,
  ranges: ranges.map((range) => ({ ...range })),
  stopIfTrue: false,
  rule: {
    type: CFRuleType.highlightCell,
    subType: CFSubRuleType.formula,
    value: formula,
    style: {
      ...(look.bold ? { bl: BooleanNumber.TRUE } : {}),
      ...(look.color === undefined ? {} : { cl: { rgb: look.color } }),
      ...(look.fill === undefined ? {} : { bg: { rgb: look.fill } }),
    },
  },
});
