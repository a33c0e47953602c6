import type { Records } from './record.ts';
import { book } from './shared.ts';

export const bookRecords = {
  BOOK: {
    help: 'Reads your tables once, checks every row, and answers a handle that the other functions take.',
    takes: {
      tables: {
        kind: 'tables',
        help: 'Your tables with their headers, in any order, such as Materials[[#Headers],[#Data]].',
      },
    },
    answers: 'text',
    restsOn: ['memory'],
  },
} as const satisfies Records;

export const todayRecords = {
  TODAY: {
    help: 'The day that all other functions answer for where their day is left blank. Worked out whenever Book is: on opening, and after each change in a table.',
    takes: { book },
    answers: 'number',
    restsOn: ['book', 'day'],
  },
} as const satisfies Records;
