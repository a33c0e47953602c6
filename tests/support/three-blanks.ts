import { records } from '../../functions/records/index.ts';
import type { Argument, Kind } from '../../functions/records/record.ts';
import type { Column } from '../../src/workbook/column.ts';
import { Findings } from '../../src/workbook/read/findings.ts';
import { recogniseTable } from '../../src/workbook/read/recognise.ts';
import { tables } from '../../src/workbook/schema.ts';
import { type CallFunction, CellError } from './worksheet-functions.ts';

/**
 * What hosts hand over for a blank cell, by platform and build: public threads of the vendor's repository
 * github.com/OfficeDev/office-js, issues 1951 (0 in repeating ranges), 4702 (0 on the desktop, null on the web)
 * and 5262 (0 in ranges).
 */
export const blanks = ['', null, 0] as const;
export type Blank = (typeof blanks)[number];

type HostRange = readonly (readonly unknown[])[];

/** Kinds of arguments in which a 0 means something else than a blank. A formula tells them apart: IF(A1="","",A1). */
const toldApart: readonly Kind[] = ['number', 'percent', 'range'];

const isMeant = ({ kind, ifBlank }: Argument): boolean => toldApart.includes(kind) && ifBlank !== 0;

/** The places of a function's arguments in which a 0 is meant. */
const meantZeros: Readonly<Record<string, readonly number[]>> = Object.fromEntries(
  Object.entries(records).map(([id, { takes }]) => [
    id,
    Object.values(takes).flatMap((argument, at) => (isMeant(argument) ? [at] : [])),
  ]),
);

/** Asks three hosts, of which each hands blanks over in its own way, and holds their answers equal. */
export function asksThree(hosts: readonly CallFunction[]): CallFunction {
  return (id, ...given) => {
    const [first, ...others] = blanks.map((blank, at) =>
      outcomeOf(() => hosts[at]?.(id, ...handedOver(id, given, blank))),
    );
    others.forEach((other, at) => {
      if (other.failed === first?.failed && told(other) === told(first)) return;
      throw new Error(
        `${id} with ${JSON.stringify(blanks[at + 1])} for blanks: ${told(other)}, and with "": ${told(first)}`,
      );
    });
    if (first?.failed === true) throw first.value;
    return first?.value;
  };
}

interface Outcome {
  readonly failed: boolean;
  readonly value: unknown;
}

function outcomeOf(call: () => unknown): Outcome {
  try {
    return { failed: false, value: call() };
  } catch (value) {
    return { failed: true, value };
  }
}

/** As text, since each host's lists are of a kind of their own. */
const told = ({ value }: Outcome = { failed: true, value: undefined }): string =>
  value instanceof CellError ? `${value.code} ${value.message}` : JSON.stringify(value);

/** The arguments of a call as a host hands them over. */
export function handedOver(id: string, given: readonly unknown[], blank: Blank): unknown[] {
  if (id === 'BOOK') return tablesHandedOver(given, blank);
  const asMeant = blank === 0 ? (meantZeros[id] ?? []) : [];
  return given.map((argument, at) =>
    asMeant.includes(at) ? argument : withBlank(argument, blank),
  );
}

/** A cell, or a range's cells. What is left out, undefined, is no cell. */
function withBlank(argument: unknown, blank: Blank): unknown {
  if (Array.isArray(argument)) return argument.map((each: unknown) => withBlank(each, blank));
  return argument === '' || argument === null ? blank : argument;
}

/** Tables keep their headers. */
function tablesHandedOver(given: readonly unknown[], blank: Blank): unknown[] {
  if (blank !== 0) return given.map((range) => withBlankBelow(range, blank));
  const ranges = given.map((range) => zerosIn(range));
  // With a 0 that is meant beside no blank cell at all, nothing tells how the host hands blanks over.
  if (ranges.includes('unclear')) return [...given];
  return given.map((range, at) =>
    ranges[at] === 'meant' ? range : withBlankBelow(withBlankColumn(range), 0),
  );
}

const isRange = (given: unknown): given is HostRange =>
  Array.isArray(given) &&
  given.length > 0 &&
  given.every((row) => Array.isArray(row) && !row.some(Array.isArray));

function withBlankBelow(range: unknown, blank: Blank): unknown {
  if (!isRange(range)) return range;
  const [headers = [], ...rows] = range;
  // A host hands a rectangle over: what a test left off a row is blank too.
  return [headers, ...rows.map((row) => headers.map((_, at) => withBlank(row[at] ?? '', blank)))];
}

const known = (range: HostRange) => recogniseTable(range, 1, new Findings());

/** Whether a table holds a 0 that is meant, and beside it a blank that shows it to be one. */
function zerosIn(range: unknown): 'meant' | 'unclear' | 'none' {
  const table = isRange(range) ? known(range) : undefined;
  if (table === undefined) return 'none';
  const rows = table.range.slice(1);
  const places = [...table.position];
  const isMeant = places.some(
    ([key, at]) => table.columns[key]?.zero === 'meant' && rows.some((row) => row[at] === 0),
  );
  if (!isMeant) return 'none';
  const hasBlank = places.some(([, at]) => rows.some((row) => row[at] === '' || row[at] === null));
  return hasBlank ? 'meant' : 'unclear';
}

/** The table with a column that is blank throughout, as the starter workbook's tables have. */
function withBlankColumn(range: unknown): unknown {
  const table = isRange(range) ? known(range) : undefined;
  if (table === undefined) return range;
  const added = Object.entries<Column<unknown>>(tables[table.kind].columns).find(
    ([key, { required, zero }]) => !required && zero === 'never meant' && !table.position.has(key),
  );
  if (added === undefined) return range;
  const [headers = [], ...rows] = table.range;
  return [[...headers, added[1].header], ...rows.map((row) => [...row, ''])];
}
