import { accountsRecords } from './accounts.ts';
import { bookRecords, todayRecords } from './book.ts';
import { buyRecords } from './buy.ts';
import { costRecords } from './cost.ts';
import { labelRecords } from './label.ts';
import { makeRecords } from './make.ts';
import { measureRecords } from './measure.ts';
import { planRecords } from './plan.ts';
import type { FunctionRecord } from './record.ts';
import { sellRecords } from './sell.ts';
import { stockRecords } from './stock.ts';
import { traceRecords } from './trace.ts';

/** All functions stand in it, and a file stores formulas that ask them under it. */
export const NAMESPACE = 'POUR';

/** What a maker asks, with the functions that answer it: README's table. */
export const questions = [
  ['how are my tables read?', bookRecords],
  ['what do I weigh out?', makeRecords],
  ['what does a bar cost me?', costRecords],
  ['what do I ask for it?', sellRecords],
  ['what did it bring, and who owes whom?', accountsRecords],
  ['what is left on the shelf?', stockRecords],
  ['what must I buy, and by when?', buyRecords],
  ['what shall I make, and on which days?', planRecords],
  ['what may I write on the label?', labelRecords],
  ['what went into bar 17?', traceRecords],
  ['which day stands for a blank date?', todayRecords],
  ['how much is that in ounces?', measureRecords],
] as const;

type KeysOf<T> = T extends unknown ? keyof T : never;
export type FunctionId = KeysOf<(typeof questions)[number][1]>;

/** The record of every worksheet function by its id in the namespace. */
export const records = Object.fromEntries(
  questions.flatMap(([, group]) => Object.entries<FunctionRecord>(group)),
) as Readonly<Record<FunctionId, FunctionRecord>>;
