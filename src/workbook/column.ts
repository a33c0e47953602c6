import { type Day, FIRST_DAY, LAST_DAY, readDay } from '../domain/kernel/day.ts';
import { howToTypeDay } from '../domain/kernel/typed-day.ts';
import { didYouMean, nameKey, quoted } from '../domain/kernel/names.ts';
import { noNumber } from './no-number.ts';
import type { Cell } from './port.ts';

/** What is wrong with a cell, as the end of a sentence that begins with the cell. */
export class Trouble {
  readonly says: string;

  constructor(says: string) {
    this.says = says;
  }
}

/** How a host should show a column. */
export type ColumnFormat = 'text' | 'number' | 'whole' | 'money' | 'percent' | 'date';

/**
 * What a 0 stands for in a column. A host may hand a blank cell over as 0 (Excel does, by platform and build), so it
 * is read as blank wherever it can be.
 */
export type Zero =
  /** It can't be meant there, so it is a blank: a name, a date, a size. */
  | 'never meant'
  /** It means what a blank does: no freight. */
  | 'as blank'
  /** It means something of its own: a price of nothing, where a blank is a price not known. */
  | 'meant';

/** One column of a table: its header, how its cells are read, and what the maker should know of it. */
export interface Column<T> {
  readonly header: string;
  /** The table is not recognised without this header. */
  readonly required: boolean;
  readonly format: ColumnFormat;
  readonly help: string;
  readonly zero: Zero;
  /** Allowed texts, for a drop-down. */
  readonly choices?: readonly string[];
  readonly read: (cell: Cell) => T | Trouble;
  /**
   * Numbers in these limits, or texts of so many letters without spaces around them, are read as they
   * are: `read` need not be asked. Left out where there are none.
   */
  readonly plain?: Limits;
}

interface Limits {
  readonly least: number;
  readonly most: number;
}

/** More than any soap workshop weighs or pays, and exact in a cell's 15 digits. */
const LARGEST_NUMBER = 1e12;

/** Nothing, or nothing but spaces and characters that can't be seen. */
export function isBlank(cell: unknown): boolean {
  if (cell === undefined || cell === null || cell === '') return true;
  if (typeof cell !== 'string') return false;
  // Most cells begin with a plain letter, which is quicker to see than that they aren't all spaces.
  const first = cell.charCodeAt(0);
  return (first <= 0x20 || first > 0x7e) && nameKey(cell) === '';
}

/** What sheets show for a cell in error, which some hosts hand over as text. */
const ERROR =
  /^#(?:N\/A|VALUE!|REF!|DIV\/0!|NAME\?|NUM!|NULL!|SPILL!|CALC!|GETTING_DATA|BUSY!|CONNECT!|FIELD!|BLOCKED!|UNKNOWN!|EXTERNAL!|PYTHON!|TIMEOUT!|ERROR!|CYCLE!)$/iu;

/** The error that a cell's text stands for, or undefined where it is a text of its own. */
export function errorIn(cell: unknown): string | undefined {
  const typed = typeof cell === 'string' && cell.includes('#') ? cell.trim() : '';
  return ERROR.test(typed) ? typed.toUpperCase() : undefined;
}

/** Whether a cell of a column is blank: nothing, nothing but spaces, or a 0 that stands for it. */
export const isBlankIn = ({ zero }: Column<unknown>, cell: unknown): boolean =>
  cell === 0 ? zero !== 'meant' : isBlank(cell);

/** Reads a cell as a host hands it over: blank ones may be left out, and errors of the sheet are no values. */
export function readCell<T>(column: Column<T>, cell: unknown): T | Trouble {
  if (isPlain(column, cell)) return cell as T;
  const error = errorIn(cell);
  if (error !== undefined)
    return new Trouble(`holds the error ${error}. Mend that cell, or clear it`);
  if (isBlankIn(column, cell)) return column.read('');
  if (typeof cell === 'string' || typeof cell === 'number' || typeof cell === 'boolean')
    return column.read(cell);
  return new Trouble('holds an error or something else that is no plain value. Mend that cell');
}

/** Whether a column reads a cell as it stands. */
function isPlain({ format, plain, zero }: Column<unknown>, cell: unknown): boolean {
  if (plain === undefined || (cell === 0 && zero !== 'meant')) return false;
  if (format === 'text') return isPlainText(cell, plain);
  return typeof cell === 'number' && cell >= plain.least && cell <= plain.most;
}

/** Whether a cell is a text of so many letters that neither begins nor ends with what may be a space. */
export function isPlainText(cell: unknown, { least, most }: Limits): cell is string {
  return (
    typeof cell === 'string' &&
    cell.length >= least &&
    cell.length <= most &&
    isPlainLetter(cell.charCodeAt(0)) &&
    isPlainLetter(cell.charCodeAt(cell.length - 1))
  );
}

/** Printable, and not the # that errors begin with. */
const isPlainLetter = (letter: number): boolean =>
  letter > 0x20 && letter <= 0x7e && letter !== 0x23;

const must = <T>(column: Column<T | undefined>): Column<T> => ({
  ...column,
  required: true,
  read: (cell) => column.read(cell) ?? new Trouble(`is ${nothingIn(column)}. Fill it in`),
});

/** Where a number can't be 0, one that is typed is told of too. */
const nothingIn = ({ format, zero }: Column<unknown>): string =>
  zero === 'meant' || format === 'text' || format === 'date' ? 'blank' : 'blank or 0';

/** Marks a column as one that its table is recognised by, and whose cells may not be blank. */
export const required = must;

/** Marks a column as one that its table is recognised by, though its cells may be blank. */
export const requiredHeader = <T>(column: Column<T>): Column<T> => ({ ...column, required: true });

/** Longer than any name a person reads; it keeps every sentence that holds a name short. */
const LONGEST_NAME = 255;

/** A name; a number typed as a name is taken as its text. */
export function text(
  header: string,
  help: string,
  longest = LONGEST_NAME,
): Column<string | undefined> {
  return {
    header,
    required: false,
    format: 'text',
    help,
    zero: 'never meant',
    plain: { least: 1, most: longest },
    read: (cell) => {
      if (isBlank(cell)) return undefined;
      const typed = String(cell).trim();
      return typed.length <= longest
        ? typed
        : new Trouble(
            `is ${quoted(typed)}, which is ${typed.length} letters long. Use at most ${longest}`,
          );
    },
  };
}

/** Free text as long as a cell can hold. */
export const longText = (header: string, help: string): Column<string | undefined> =>
  text(header, help, Infinity);

/** A word whether it is said of one or of several: an embed mold makes "embed" or "embeds". */
export const numberless = (word: string): string => nameKey(word).replace(/(?<=\p{L}{3})s$/u, '');

/** One of a few words, in any case, of one or of several. */
export function choice<T extends string>(
  header: string,
  choices: readonly T[],
  help: string,
): Column<T | undefined> {
  const byKey = new Map<string, T>(choices.map((word) => [numberless(word), word]));
  return {
    header,
    required: false,
    format: 'text',
    help,
    zero: 'never meant',
    choices,
    read: (cell) => {
      if (isBlank(cell)) return undefined;
      return (
        byKey.get(numberless(String(cell))) ??
        new Trouble(
          `is ${quoted(cell)}.${didYouMean(String(cell), choices)} Use one of: ${choices.join(', ')}`,
        )
      );
    },
  };
}

export interface NumberLimits {
  readonly min?: number;
  /** Exclusive lower limit. */
  readonly above?: number;
  readonly max?: number;
  /** Exclusive upper limit. */
  readonly below?: number;
  readonly whole?: boolean;
  readonly format?: ColumnFormat;
  /** Where the limits take 0: what it stands for; something of its own unless told. */
  readonly zero?: Zero;
}

/** A number within limits. Text that looks like a number is refused, since the sheet would not add it up. */
export function number(
  header: string,
  limits: NumberLimits,
  help: string,
): Column<number | undefined> {
  return {
    header,
    required: false,
    format: limits.format ?? (limits.whole === true ? 'whole' : 'number'),
    help,
    zero: outOfLimits(0, limits) === undefined ? (limits.zero ?? 'meant') : 'never meant',
    ...plainNumbers(limits),
    read: (cell) => {
      if (typeof cell !== 'number') {
        return isBlank(cell) ? undefined : new Trouble(`is ${noNumber(cell)}`);
      }
      return outOfLimits(cell, limits) ?? cell;
    },
  };
}

/** The numbers that surely are within some limits; not worth telling where there are more than two. */
function plainNumbers({ min, above, max, below, whole }: NumberLimits): { plain?: Limits } {
  if (above !== undefined || below !== undefined || whole === true) return {};
  return {
    plain: { least: min ?? -LARGEST_NUMBER, most: Math.min(max ?? LARGEST_NUMBER, LARGEST_NUMBER) },
  };
}

function outOfLimits(value: number, limits: NumberLimits): Trouble | undefined {
  if (!Number.isFinite(value)) return new Trouble('is not a number. Type a plain number');
  if (Math.abs(value) > LARGEST_NUMBER)
    return new Trouble(`is ${value}, which is too large. Type a smaller number`);
  if (limits.whole === true && !Number.isInteger(value)) {
    return new Trouble(`is ${value}. Type a whole number`);
  }
  if (limits.min !== undefined && value < limits.min) {
    // A cell that shows 95 % holds 0.95, which no share that starts at 1 can mean.
    const meant =
      limits.format === 'percent' && value > 0 ? Number((value * 100).toPrecision(15)) : 0;
    const hint = meant > limits.min ? `: ${meant} if ${meant} % is meant` : '';
    return new Trouble(`is ${value}. Type ${limits.min} or more${hint}`);
  }
  if (limits.above !== undefined && value <= limits.above) {
    return new Trouble(`is ${value}. Type more than ${limits.above}`);
  }
  if (limits.max !== undefined && value > limits.max) {
    return new Trouble(`is ${value}. Type at most ${limits.max}`);
  }
  if (limits.below !== undefined && value >= limits.below) {
    return new Trouble(`is ${value}. Type less than ${limits.below}`);
  }
  return undefined;
}

/** An amount of money, 0 or more, in the Settings' currency. */
export const money = (
  header: string,
  help: string,
  zero: Zero = 'meant',
): Column<number | undefined> => number(header, { min: 0, format: 'money', zero }, help);

/** A serial number or ISO text. */
export function date(header: string, help: string): Column<Day | undefined> {
  return {
    header,
    required: false,
    format: 'date',
    help,
    zero: 'never meant',
    plain: { least: FIRST_DAY, most: LAST_DAY },
    read: (cell) => {
      if (isBlank(cell)) return undefined;
      return (
        readDay(cell) ??
        new Trouble(`is ${quoted(cell)}, which is not a date. ${howToTypeDay(String(cell))}`)
      );
    },
  };
}

/** Any cell as it stands; the setting's own rule reads it. */
export function anything(header: string, help: string): Column<Cell | undefined> {
  return {
    header,
    required: false,
    format: 'text',
    help,
    zero: 'meant',
    read: (cell) => (isBlank(cell) ? undefined : cell),
  };
}
