/**
 * What is known of a worksheet function without asking it: plain data, from which registration, the formula helper's
 * metadata, the answers kept, the spilling formulas of a file and README's table follow. Its answer stands beside it, in
 * `functions/answers/`.
 */
export interface FunctionRecord {
  /** What it does, in a sentence for the formula helper. */
  readonly help: string;
  /** Its arguments in order, by their names in code: `asOf` is said "as of". */
  readonly takes: Readonly<Record<string, Argument>>;
  readonly answers: Answers;
  /** What an answer hangs on beside the arguments; nothing where empty. */
  readonly restsOn: readonly RestsOn[];
}

/** The functions of one question of README, by id. */
export type Records = Readonly<Record<string, FunctionRecord>>;

export interface Argument {
  readonly kind: Kind;
  /** What to give, in a sentence for the formula helper. */
  readonly help: string;
  /** It may be left out at the end of a call. */
  readonly optional?: true;
  /** The cell that a blank stands for; without one a blank is refused, or is nothing where optional. */
  readonly ifBlank?: number | boolean | 'today';
  /** It is looked at only where the argument of this name is given. */
  readonly onlyWith?: string;
  /** Its name in error sentences, where that is not the name it has in formulas. */
  readonly said?: string;
}

/** Every kind of argument with the cells it takes; `functions/kinds.ts` says how each is read. */
export const kinds = {
  /** Looked up in a table. */
  name: 'cell',
  /** A name for each cell, "" where it is blank. */
  names: 'range',
  /** One name, or a column of them, "" where it is blank. */
  'name or names': 'range',
  unit: 'cell',
  number: 'cell',
  /** A number that can't be 0. */
  count: 'cell',
  /** One such number, or a column of them, each of which may be blank. */
  'count or counts': 'range',
  percent: 'cell',
  /** A percent below 1 can't be meant (contract §2). */
  'percent from 1': 'cell',
  'yes/no': 'cell',
  day: 'cell',
  /** Cells of any kind. */
  range: 'range',
  book: 'cell',
  /** Ranges up to the end of the call. */
  tables: 'ranges',
} as const;
export type Kind = keyof typeof kinds;

/** One cell, one column of numbers without a header, or rows under a header. */
export type Answers = 'number' | 'text' | 'numbers' | List;

export interface List {
  readonly columns: readonly string[];
  /** With some arguments it answers one number instead. */
  readonly orNumber?: true;
}

/**
 * - `day`: today;
 * - `items`: of a book its catalogue and the histories of the items it looks up, and no other line;
 * - `book`: any line of a book;
 * - `memory`: which books are in memory, so that no answer of it is kept.
 */
export type RestsOn = 'day' | 'items' | 'book' | 'memory';

/** Whether an answer may fill several cells. */
export const spills = ({ answers }: FunctionRecord): boolean =>
  typeof answers === 'object' || answers === 'numbers';

/** A name in code as a person reads it: "useLeftovers" is "use leftovers". */
export const spaced = (name: string): string =>
  name.replace(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** An argument's name as the contract writes it: "feePercent" is "fee %". */
export const spoken = (name: string): string => spaced(name).replace(/ percent$/, ' %');
