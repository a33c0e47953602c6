import { today } from './clock.ts';
import { CellFailure } from './failure.ts';
import { readers } from './kinds.ts';
import { type Argument, type FunctionRecord, kinds, spoken } from './records/record.ts';

/**
 * Reads what cells give into the arguments of a record: the book first, since where it fails all else may fail for it,
 * then from left to right. Throws a sentence that names the argument.
 */
export function givenBy(record: FunctionRecord): (cells: readonly unknown[]) => unknown {
  const places = Object.entries(record.takes)
    .map(([name, argument], at) => ({ name, argument, at, what: argument.said ?? spoken(name) }))
    .sort((one, other) => Number(isFirst(other.argument)) - Number(isFirst(one.argument)));
  return (cells) => {
    const given: Record<string, unknown> = {};
    for (const { name, argument, at, what } of places) {
      if (argument.onlyWith !== undefined && given[argument.onlyWith] === undefined) continue;
      const isRest = kinds[argument.kind] === 'ranges';
      given[name] = valueOf(argument, isRest ? cells.slice(at) : cells[at], what);
    }
    return record.restsOn.includes('day') ? { ...given, today: today() } : given;
  };
}

const isFirst = ({ kind, optional }: Argument): boolean => kind === 'book' && optional !== true;

function valueOf({ kind, ifBlank, optional }: Argument, cell: unknown, what: string): unknown {
  const { read, blank } = readers[kind];
  const value = read(cell, what);
  if (value !== undefined) return value;
  if (ifBlank !== undefined) return read(ifBlank === 'today' ? today() : ifBlank, what);
  if (optional === true) return undefined;
  throw new CellFailure('#VALUE!', `${what} is ${blank}`);
}
