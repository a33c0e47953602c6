import { bookArgument } from './books.ts';
import { today } from './clock.ts';

/**
 * The day that all other functions answer for where their day is left blank. Worked out whenever Book is: on opening, and after each change in a table.
 * @customfunction TODAY
 * @param {any} book The cell named Book.
 * @returns {number} The date as its number: format the cell as a date.
 */
export function dayOfBlanks(book: any): number {
  bookArgument(book);
  return today();
}
