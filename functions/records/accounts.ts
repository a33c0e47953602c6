import type { Records } from './record.ts';
import { book } from './shared.ts';

const days = {
  from: { kind: 'day', help: 'The first day.' },
  to: { kind: 'day', help: 'The last day.' },
} as const;

export const accountsRecords = {
  PERIOD: {
    help: 'What the days from one to another brought home: sales, stock opened and closed, cost of goods, profit.',
    takes: { book, ...days },
    answers: { columns: ['Line', 'Amount'] },
    restsOn: ['book', 'day'],
  },
  SETTLE: {
    help: 'Who of the partners paid, took and worked in those days, and what is owed to whom.',
    takes: { book, ...days },
    answers: { columns: ['Partner', 'Paid', 'Took', 'Minutes', 'Share', 'Owed'] },
    restsOn: ['book', 'day'],
  },
} as const satisfies Records;
