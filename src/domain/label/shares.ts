import { type Exact, exact, hundred } from '../kernel/exact.ts';
import { quoted } from '../kernel/names.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';

/** One part of a material as its cell states it. */
export interface Share {
  readonly name: string;
  /** Percent of the material by weight; undefined where the cell gives none. */
  readonly percent: Exact | undefined;
}

/** Names that have a number of their own, which is no percent. */
const NUMBERED =
  '(?:ci|peg|ppg|[a-z]+eth|poloxamer|polyglyceryl|polysorbate|(?:poly)?quaternium|(?:(?:ext\\. )?(?:f?d&c )?(?:red|blue|yellow|green|orange|violet|brown|black)))(?: no\\.?)?\\s*\\d+';
const OWN_NUMBER = new RegExp(`^${NUMBERED}$`, 'iu');
const OWN_NUMBERS = new RegExp(`\\b${NUMBERED}`, 'giu');
const WITH_PERCENT = /^(.*\S)\s+(\d+(?:[.,]\d+)?)\s*(%?)$/u;

/** A comma with a space after it parts names too, as on a label; not so in a name like "1, 2-Hexanediol". */
const BETWEEN = /[;\n]|,\s+(?!\d)|(?<!\d),\s+/u;

/** A percent in the middle of a name, so two entries in one; not the 2 of "Methyl 2-Octynoate". */
const RUN_TOGETHER =
  /\d%?,\p{L}|\s\d+(?:[.,]\d+)?(?:\s*%)?(?:,\s+\d|\s*[/|+&:.](?:\s*\p{L}|\s+\d)|\s+(?:[-–]\s*)?[\p{L}\d])/u;

/** A number at the end that is no percent, such as -1, <0.1 or .5. */
const ODD_PERCENT = /\s[^\p{L}\d\s]*\d[\d.,]*\s*%?$/u;

/** The sign of such a number where it stands apart: it is no part of the name. */
const LONE_SIGN = /\s[^\p{L}\d\s)]+$/u;

/** A name has a letter, or is the CAS number of a substance. */
const NAME = /\p{L}|^\d{2,7}-\d{2}-\d$/u;

/**
 * Reads `name percent; name percent` (contract §2). A comma may stand for the decimal point. Fails
 * with the end of a sentence where a percent is over 100 or can't be read, an entry has no name, or two
 * run together: an allergen in a name would stand on no label.
 */
export function readShares(cell: string): Result<readonly Share[]> {
  const parts = cell
    .split(BETWEEN)
    .map((part) => part.trim().replace(/\s+/gu, ' '))
    .filter((part) => part !== '');
  const shares = parts.map(readShare);
  const together = parts.find((_, at) =>
    RUN_TOGETHER.test(shares[at]?.name.replace(OWN_NUMBERS, 'x0') ?? ''),
  );
  if (together !== undefined)
    return wrong(
      `runs entries together in ${quoted(together)}: part them with ";", such as Eugenol 80; Linalool 0.3`,
    );
  const nameless = parts.find((_, at) => !NAME.test(shares[at]?.name ?? ''));
  if (nameless !== undefined)
    return wrong(`holds ${quoted(nameless)} without a name: type it like Linalool 0.3`);
  const odd = parts.find((_, at) => hasOddPercent(shares[at]));
  if (odd !== undefined)
    return wrong(`holds ${quoted(odd)}, whose percent can't be read: type it like Linalool 0.3`);
  const over = shares.find(({ percent }) => percent?.gt(hundred));
  if (over !== undefined)
    return wrong(`gives ${over.name} ${String(over.percent)} %, more than the whole material`);
  return answer(shares);
}

function hasOddPercent({ name, percent }: Share = { name: '', percent: undefined }): boolean {
  if (percent !== undefined) return LONE_SIGN.test(name);
  return !OWN_NUMBER.test(name) && ODD_PERCENT.test(name);
}

function readShare(part: string): Share {
  const match = OWN_NUMBER.test(part) ? null : WITH_PERCENT.exec(part);
  if (match === null) return { name: part, percent: undefined };
  const [, name = '', percent = ''] = match;
  return { name, percent: exact(Number(percent.replace(',', '.'))) };
}
