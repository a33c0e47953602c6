import { readFigure } from '../domain/measure/typed-figure.ts';
import { isNumberAsText, NUMBER_AS_TEXT, quoted } from '../domain/kernel/names.ts';

/** What a cell holds instead of a number and what to type, as the end of a sentence that begins "… is". */
export function noNumber(cell: string | boolean): string {
  if (isNumberAsText(cell)) return `${quoted(cell)}, ${NUMBER_AS_TEXT}`;
  return `${quoted(cell)}, which is not a number. ${whatToType(String(cell))}`;
}

/** What to type instead of a figure with its unit, a currency's sign or a comma for the point. */
function whatToType(typed: string): string {
  if (/\d.*\p{L}/u.test(typed)) {
    return 'Type the number alone, in the unit that its row or header names';
  }
  const [text = '', ...more] = typed.match(/\d[\d.,]*/gu) ?? [];
  const figure = more.length > 0 || /[.,]$/u.test(text) ? undefined : readFigure(text);
  if (figure === undefined) return 'Type a plain number';
  if ('either' in figure)
    return `Type ${figure.either.map((value) => value.toFixed()).join(' or ')}`;
  const comma = text.includes(',') ? ', with a point' : ' alone';
  return `Type ${typed.includes('-') ? '-' : ''}${figure.value.toFixed()}${comma}`;
}
