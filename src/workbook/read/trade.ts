import type { BarSet, SetLine } from '../../domain/book/trade.ts';
import { findItem, findPartner } from '../../domain/book/find.ts';
import { exact, hundred, sum } from '../../domain/kernel/exact.ts';
import { nameKey, quoted } from '../../domain/kernel/names.ts';
import { isExcused, noted, noteSmall, optional, type Reading } from './context.ts';
import { groupRows, type Rows } from './rows.ts';

export function readPlaces(rows: Rows<'places'>, reading: Reading): void {
  for (const row of rows) {
    const percents = {
      Commission: row.commissionPercent,
      Fee: row.feePercent,
      Tax: row.taxPercent,
    };
    for (const [what, percent = 0] of Object.entries(percents))
      noteSmall(reading, 'percent', row.place, `${what} % of ${row.place} in Places`, percent);
    reading.places.set(nameKey(row.place), {
      name: row.place,
      sellsAs: row.sellsAs,
      commissionPercent: exact(row.commissionPercent ?? 0),
      feePercent: optional(row.feePercent),
      feeFixed: optional(row.feeFixed),
      postageEach: exact(row.postageEach ?? 0),
      leastBars: optional(row.leastBars),
      taxPercent: optional(row.taxPercent),
    });
  }
}

/** Shares must be the whole: a part that nobody has would be owed to nobody. */
export function readPartners(rows: Rows<'partners'>, reading: Reading): void {
  for (const { partner, sharePercent } of rows)
    reading.partners.set(nameKey(partner), { name: partner, sharePercent: exact(sharePercent) });
  const last = rows.at(-1);
  const whole = sum(rows.map(({ sharePercent }) => exact(sharePercent)));
  if (last === undefined || whole.eq(hundred) || reading.findings.excusesAny('Partners')) return;
  const rest = hundred.minus(whole).plus(exact(last.sharePercent));
  const how = rest.gte(1)
    ? `Type ${rest.toString()}, or mend the others, so that all are 100`
    : 'Mend them so that all are 100';
  reading.findings.add(
    'Partners',
    last.row,
    'Share %',
    `is ${last.sharePercent}, and the shares of all partners add up to ${whole.toString()}. ${how}`,
  );
}

/** Whether a name is a partner's; where none are listed, any may be written. */
export function checkPartner(
  table: string,
  row: number,
  column: string,
  name: string | undefined,
  reading: Reading,
): void {
  if (name === undefined || reading.partners.size === 0 || isExcused(name, reading)) return;
  noted(reading, { table, row, column }, findPartner(reading.partners, name));
}

export function readSets(rows: Rows<'sets'>, reading: Reading): Map<string, BarSet> {
  const sets = new Map<string, BarSet>();
  for (const [key, lines] of groupRows(rows, ({ set }) => set)) {
    const [first] = lines;
    if (first === undefined) continue;
    const read = lines.flatMap((line) => setLine(line, reading) ?? []);
    checkTwice(lines, reading);
    const priced = lines.filter(({ price }) => price !== undefined);
    for (const { row, price = 0 } of priced.slice(1)) {
      reading.findings.add(
        'Sets',
        row,
        'Price',
        `is ${price}, but row ${priced[0]?.row ?? 0} has the price of ${quoted(first.set)}. Clear one of them`,
      );
    }
    if (read.length === lines.length && !read.some(({ item }) => item.kind === 'bars')) {
      reading.findings.add(
        'Sets',
        first.row,
        'Item',
        `is ${quoted(first.item)}, and no line of ${quoted(first.set)} names a design. Add the bars that are in it`,
      );
    }
    sets.set(key, { name: first.set, lines: read, price: optional(priced[0]?.price) });
  }
  return sets;
}

function setLine(
  { row, item: name, perSet }: Rows<'sets'>[number],
  reading: Reading,
): SetLine | undefined {
  if (isExcused(name, reading)) return undefined;
  const item = noted(reading, { table: 'Sets', row, column: 'Item' }, findItem(reading, name));
  if (item === undefined) return undefined;
  const isPackaging = item.kind === 'material' && item.material.kind === 'packaging';
  if (item.kind !== 'bars' && !isPackaging) {
    reading.findings.add(
      'Sets',
      row,
      'Item',
      `is ${quoted(name)}, which is neither a design nor packaging. Name one of these`,
    );
    return undefined;
  }
  if (item.unit === 'each' && !Number.isInteger(perSet)) {
    reading.findings.add('Sets', row, 'Per set', `is ${perSet}. Type a whole number`);
    return undefined;
  }
  return { item, perSet: exact(perSet) };
}

function checkTwice(lines: Rows<'sets'>, { findings }: Reading): void {
  for (const [, [first, ...others]] of groupRows(lines, ({ item }) => item)) {
    for (const { row, item, set } of others) {
      findings.add(
        'Sets',
        row,
        'Item',
        `is ${quoted(item)}, which stands in row ${first?.row ?? 0} of ${quoted(set)} already. Put both on one line`,
      );
    }
  }
}
