import { dayOf, isoDate } from './day.ts';

/**
 * What to type instead of a day as people write it, as a sentence without its end: `3.4.26` may be two days,
 * `April 13` is one of every year. What is no day at all is told how one is typed.
 */
export function howToTypeDay(typed: string): string {
  const { days, hasYear } = readingsOf(typed);
  if (days.length === 0) return 'Type it like 2026-11-25';
  if (!hasYear)
    return `Type the year with it: ${days.map((day) => day.iso).join(' or ')} if 2026 is meant`;
  if (days.length === 1) return `Type ${days[0]?.iso ?? ''}`;
  return `Type ${days.map(({ iso, inWords }) => `${iso} for ${inWords}`).join(' or ')}`;
}

/** Whether a text is a day that could be another one, or one of another year: a host must not take it for either. */
export function isUnclearDay(typed: string): boolean {
  const { days, hasYear, isWhole } = readingsOf(typed);
  return days.length > 0 && !(days.length === 1 && hasYear && isWhole);
}

interface Reading {
  readonly iso: string;
  readonly inWords: string;
}

/** The days that a text can mean; whether it says the year, and all four digits of it. */
interface Readings {
  readonly days: readonly Reading[];
  readonly hasYear: boolean;
  readonly isWhole: boolean;
}

const NONE: Readings = { days: [], hasYear: false, isWhole: false };

/** Only so that a day without a year can be shown with one. */
const SOME_YEAR = '2026';

const IN_FIGURES = /^(\d{1,2}|\d{4})([./-])(\d{1,2})(?:\2(\d{4}|\d{1,2})?)?$/u;
const DAY_FIRST =
  /^(\d{1,2})(?:st|nd|rd|th)?[. -]*(?:of )?([a-z]{3,9})[., -]*(\d{4}|['’]?\d{2})?$/u;
const MONTH_FIRST = /^([a-z]{3,9})[. ]*(\d{1,2})(?:st|nd|rd|th)?(?:[, ]+(\d{4}|['’]\d{2}))?$/u;

function readingsOf(typed: string): Readings {
  const text = typed.normalize('NFKC').trim().replace(/\s+/gu, ' ').toLowerCase();
  const figures = IN_FIGURES.exec(text);
  if (figures !== null) return inFigures(figures);
  const dayFirst = DAY_FIRST.exec(text);
  const [, date, month, year] = dayFirst ?? swapped(MONTH_FIRST.exec(text)) ?? [];
  const at = monthNames.findIndex((name) => month !== undefined && name.startsWith(month));
  return at < 0 ? NONE : readings(year, [[String(at + 1), date ?? '']]);
}

/** Day and month in either order, the year last; or the year first. */
function inFigures([, one = '', sign = '', two = '', three]: RegExpExecArray): Readings {
  if (one.length === 4) return three === undefined ? NONE : readings(one, [[two, three]]);
  // 3.4 is a number wherever it isn't meant as a day, and a year has two digits or four.
  if (three?.length === 1 || (three === undefined && sign === '.')) return NONE;
  return readings(three, [
    [two, one],
    [one, two],
  ]);
}

/** The real days among some months with dates. */
function readings(
  year: string | undefined,
  pairs: readonly (readonly [month: string, date: string])[],
): Readings {
  const digits = year?.replace(/['’]/u, '') ?? SOME_YEAR;
  const whole = Number(digits.length === 2 ? `20${digits}` : digits);
  const days = pairs.flatMap(([month, date]) => {
    const [m, d] = [Number(month), Number(date)];
    if (whole < 1901 || m < 1 || m > 12 || d < 1) return [];
    const iso = isoDate(dayOf(whole, m, d));
    // A date beyond the month's last would be one of the next month.
    if (Number(iso.slice(-2)) !== d) return [];
    return [{ iso, inWords: `${String(d)} ${titled(monthNames[m - 1] ?? '')} ${String(whole)}` }];
  });
  const unlike = days.filter(({ iso }, at) => days.findIndex((day) => day.iso === iso) === at);
  return { days: unlike, hasYear: year !== undefined, isWhole: digits.length === 4 };
}

const swapped = (found: RegExpExecArray | null): (string | undefined)[] | undefined =>
  found === null ? undefined : ['', found[2], found[1], found[3]];

const monthNames = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];

const titled = (name: string): string => name.slice(0, 1).toUpperCase() + name.slice(1);
