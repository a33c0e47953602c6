import { rangesOf } from '../address.ts';
import type { RangeImage } from '../image.ts';
import type { Attributes } from '../xml/xml-walk.ts';

/** A conditional format by formula, its look still a number. */
export interface StoredHighlight {
  readonly ranges: readonly RangeImage[];
  /** As stored, without "=", written for the first cell of the ranges. */
  readonly formula: string;
  /** Index into the differential styles. */
  readonly look: number;
  /** Lower comes first and wins. */
  readonly priority: number;
}

interface OpenFormat {
  readonly ranges: readonly RangeImage[];
  rules: StoredHighlight[];
  /** False once a rule is of a kind that the page does not show. */
  isShown: boolean;
}

/** Gathers conditional formats whose rules are all formulas, and counts the others. */
export function sheetHighlights() {
  const found: StoredHighlight[] = [];
  let others = 0;
  let format: OpenFormat | undefined;
  let rule: { look: number; priority: number; formula: string } | undefined;
  let inFormula = false;
  return {
    open(name: string, attributes: Attributes) {
      if (name === 'conditionalFormatting') {
        format = { ranges: rangesOf(attributes['sqref']), rules: [], isShown: true };
      } else if (name === 'cfRule' && format) {
        const { type, dxfId, priority } = attributes;
        if (type !== 'expression' || dxfId === undefined) format.isShown = false;
        rule = { look: Number(dxfId), priority: Number(priority ?? 0), formula: '' };
      } else inFormula = name === 'formula' && rule !== undefined;
    },
    text(text: string) {
      if (inFormula && rule) rule.formula += text;
    },
    close(name: string) {
      inFormula = false;
      if (name === 'cfRule' && rule && format) {
        format.rules.push({ ...rule, ranges: format.ranges });
        rule = undefined;
      } else if (name === 'conditionalFormatting' && format) {
        if (format.isShown) found.push(...format.rules);
        else others += 1;
        format = undefined;
      }
    },
    result: () => ({
      highlights: [...found].sort((a, b) => a.priority - b.priority),
      otherFormats: others,
    }),
  };
}
