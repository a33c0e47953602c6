import type { Settings } from '../../domain/book/settings.ts';
import { skinStays, valuations } from '../../domain/book/words.ts';
import { exact } from '../../domain/kernel/exact.ts';
import { nameKey, nearestName, quoted } from '../../domain/kernel/names.ts';
import { isCurrency } from '../../domain/money/currency.ts';
import { choice, type Column, isBlankIn, number, readCell, text, Trouble } from '../column.ts';
import type { Cell } from '../port.ts';
import { assume, noteSmall, type Reading } from './context.ts';
import type { Rows } from './rows.ts';

const yesNo = ['yes', 'no'] as const;
const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;

/** What a workbook without the setting has, and what this version writes (what each added: workbook/README). */
const FIRST_FORMAT = 1;
export const FORMAT = 2;

/** One setting: how its value is read, what holds where it is blank, and what it is for. */
interface SettingSpec<T> {
  readonly column: Column<T | undefined>;
  readonly standard: T;
}

const spec = <T>(column: Column<T | undefined>, standard: T): SettingSpec<T> => ({
  column,
  standard,
});

/** A percent cell may hold 0; fees and tax stay below 100. */
const percent = (header: string, help: string): Column<number | undefined> =>
  number(header, { min: 0, below: 100, format: 'percent' }, help);

/** Every setting with its default, in the order the starter workbook shows them. */
export const settingSpecs = {
  currency: spec(text('Currency', 'Three-letter code (ISO 4217).'), 'USD'),
  labourRatePerHour: spec(
    number('Labour rate per hour', { min: 0, format: 'money' }, 'What an hour of your work costs.'),
    0,
  ),
  overheadPerBar: spec(
    number(
      'Overhead per bar',
      { min: 0, format: 'money' },
      'Rent, power and the like for one bar.',
    ),
    0,
  ),
  valuation: spec(choice('Valuation', valuations, 'How stock used is valued.'), 'FIFO'),
  servicePercent: spec(
    number(
      'Service %',
      { min: 1, below: 100, format: 'percent' },
      'How often stock should last until an order comes.',
    ),
    95,
  ),
  scaleStepG: spec(
    number('Scale step g', { min: 0 }, 'Melts are rounded up to this; 0 rounds nothing.'),
    1,
  ),
  salesTaxPercent: spec(percent('Sales tax %', 'Tax on a sale.'), 0),
  pricesIncludeTax: spec(
    choice('Prices include tax', yesNo, 'yes if Price each holds the tax already.'),
    'no',
  ),
  cardFeePercent: spec(
    percent('Card fee %', 'Share of the price paid that the card firm keeps.'),
    0,
  ),
  cardFeeFixed: spec(
    number('Card fee fixed', { min: 0, format: 'money' }, 'Fixed fee for each payment.'),
    0,
  ),
  historyDays: spec(
    number(
      'History days',
      { min: 2, max: 3650, whole: true },
      'Days of use looked back on for reorder points.',
    ),
    90,
  ),
  bufferDays: spec(
    number(
      'Buffer days',
      { min: 0, max: 365, whole: true },
      'Days in hand when ordering for the plan.',
    ),
    3,
  ),
  skinStay: spec(choice('Skin stay', skinStays, 'Soap is rinsed off.'), 'rinse-off'),
  minutesPerDay: spec(
    number(
      'Minutes per day',
      { min: 0, max: 1440 },
      'Minutes you have on a working day; blank means unknown.',
    ),
    0,
  ),
  restDays: spec(text('Rest days', 'Weekdays without work, such as Sat; Sun.'), ''),
  leftoverWorthPercent: spec(
    number(
      'Leftover worth %',
      { min: 0, max: 100, format: 'percent' },
      'What a bar left over after a fair is worth, of its cost.',
    ),
    80,
  ),
  format: spec(
    number('Format', { min: 1, max: 1000, whole: true }, 'Of this workbook; leave it as it is.'),
    FIRST_FORMAT,
  ),
} as const;

type SettingKey = keyof typeof settingSpecs;
const keys = Object.keys(settingSpecs) as readonly SettingKey[];

/**
 * Reads the settings; a name that is nearly a known one is a finding, so that a slip never counts as a default. So is
 * a blank that may be a 0 (`canBlankBeZero`) where the two mean different things.
 */
export function readSettings(
  rows: Rows<'settings'>,
  reading: Reading,
  canBlankBeZero: boolean,
): Settings {
  const typed = new Map(rows.map((row) => [nameKey(row.setting), row]));
  checkNames(rows, reading);
  noteNewerFormat(Number(typed.get('format')?.value), reading);
  const value = <K extends SettingKey>(key: K): (typeof settingSpecs)[K]['standard'] => {
    const { column, standard } = settingSpecs[key];
    const row = typed.get(nameKey(column.header));
    const isUnclear =
      row !== undefined && row.value === undefined && differsFromZero(column, standard);
    if (canBlankBeZero && isUnclear) {
      reading.findings.add(
        'Settings',
        row.row,
        'Value',
        `of ${column.header} is 0 or blank, which this program hands over alike. Type ${standard}, as where it is blank, another number, or none for 0`,
      );
    }
    const read = readCell<unknown>(column, asWord(row?.value ?? '', column));
    if (!(read instanceof Trouble)) {
      if (column.format === 'percent')
        noteSmall(reading, 'setting', column.header, column.header, Number(read ?? 0));
      return (read ?? standard) as (typeof settingSpecs)[K]['standard'];
    }
    reading.findings.add('Settings', row?.row, 'Value', `of ${column.header} ${read.says}`);
    return standard;
  };
  return {
    currency: currencyCode(value('currency'), typed.get('currency')?.row, reading),
    labourRatePerHour: exact(value('labourRatePerHour')),
    overheadPerBar: exact(value('overheadPerBar')),
    valuation: value('valuation') as Settings['valuation'],
    servicePercent: exact(value('servicePercent')),
    scaleStepG: exact(value('scaleStepG')),
    salesTaxPercent: exact(value('salesTaxPercent')),
    pricesIncludeTax: value('pricesIncludeTax') === ('yes' as string),
    cardFeePercent: exact(value('cardFeePercent')),
    cardFeeFixed: exact(value('cardFeeFixed')),
    historyDays: value('historyDays'),
    bufferDays: value('bufferDays'),
    skinStay: value('skinStay') as Settings['skinStay'],
    skinStaySet: !isBlankIn(settingSpecs.skinStay.column, typed.get('skin stay')?.value),
    minutesPerDay: value('minutesPerDay'),
    restDays: readRestDays(value('restDays'), typed.get('rest days')?.row, reading),
    leftoverWorthPercent: exact(value('leftoverWorthPercent')),
  };
}

/** A newer workbook is read as far as it is known; what it holds beyond that would count for nothing. */
function noteNewerFormat(format: number, reading: Reading): void {
  if (!(format > FORMAT)) return;
  assume(reading, {
    kind: 'setting',
    about: 'Format',
    sentence: `This workbook has format ${format}, and this version of the add-in knows formats up to ${FORMAT}: what is new in it is not seen. Update the add-in.`,
  });
}

function checkNames(rows: Rows<'settings'>, reading: Reading): void {
  const known = keys.map((key) => settingSpecs[key].column.header);
  for (const row of rows) {
    const near = nearestName(row.setting, known);
    if (near === undefined) {
      assume(reading, {
        kind: 'setting',
        about: row.setting,
        sentence: `The setting "${row.setting}" is not one that is used here.`,
      });
    } else if (nameKey(near) !== nameKey(row.setting)) {
      reading.findings.add(
        'Settings',
        row.row,
        'Setting',
        `is ${quoted(row.setting)}, which is not known. Did you mean "${near}"?`,
      );
    }
  }
}

/** Whether a 0 is a choice of its own, and not what a blank stands for. */
const differsFromZero = ({ zero }: Column<unknown>, standard: unknown): boolean =>
  zero === 'meant' && standard !== 0;

/** A tick box in a sheet is as good as yes or no, and the word none as good as 0. */
function asWord(cell: Cell, { format }: Column<unknown>): Cell {
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  return format !== 'text' && typeof cell === 'string' && nameKey(cell) === 'none' ? 0 : cell;
}

function currencyCode(typed: string, row: number | undefined, reading: Reading): string {
  const code = typed.toUpperCase();
  if (isCurrency(code)) return code;
  reading.findings.add(
    'Settings',
    row,
    'Value',
    `of Currency is ${quoted(typed)}, which is not an ISO 4217 code. Use three letters such as USD or EUR`,
  );
  return settingSpecs.currency.standard;
}

function readRestDays(typed: string, row: number | undefined, reading: Reading): number[] {
  const words = typed.split(/[;,\s]+/u).filter((word) => word !== '');
  return words.flatMap((word) => {
    const at = weekdays.findIndex((day) => word.toLowerCase().startsWith(day.toLowerCase()));
    if (at >= 0) return [at + 1];
    reading.findings.add(
      'Settings',
      row,
      'Value',
      `of Rest days holds ${quoted(word)}. Use ${weekdays.join(', ')}`,
    );
    return [];
  });
}
