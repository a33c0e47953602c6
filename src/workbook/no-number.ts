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
  const [figure = '', ...more] = typed.match(/\d[\d.,]*/gu) ?? [];
  if (more.length > 0 || /^$|[.,].*[.,]|[.,]$/u.test(figure)) return 'Type a plain number';
  if (/^\d{1,3},\d{3}$/u.test(figure)) {
    return `Type ${figure.replace(',', '')} or ${figure.replace(',', '.')}`;
  }
  const comma = figure.includes(',') ? ', with a point' : ' alone';
  return `Type ${typed.includes('-') ? '-' : ''}${figure.replace(',', '.')}${comma}`;
}
