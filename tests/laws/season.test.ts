import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { itemOfMaterial } from '../../src/domain/book/find.ts';
import type { Material, Mold } from '../../src/domain/book/book.ts';
import { addTo, type Exact, sum, zero } from '../../src/domain/kernel/exact.ts';
import { orderAdvice } from '../../src/domain/now/now-order.ts';
import { pourAdvice } from '../../src/domain/now/now-pour.ts';
import { materialNeeds } from '../../src/domain/recipe/material-needs.ts';
import { noLeftovers } from '../../src/domain/recipe/melt.ts';
import { type BarsWanted, planSitting } from '../../src/domain/recipe/melt-plan.ts';
import { calendar, type CalendarEntry } from '../../src/domain/schedule/calendar.ts';
import { capacityOf, daysInMold } from '../../src/domain/schedule/capacity.ts';
import { onHand } from '../../src/domain/stock/on-hand.ts';
import { supplies } from '../../src/domain/supplies/supplies.ts';
import { designNames, LAST_DAY, newWorkshop } from '../support/arbitrary-book.ts';
import { readTables, sure } from '../support/ledger-of.ts';
import { table, type Tables, withSetting } from '../support/small-book.ts';

/** A workshop with a plan for its two designs, short days or long ones, and stock that keeps. */
const season: fc.Arbitrary<Tables> = fc
  .record({
    tables: newWorkshop,
    plan: fc.array(
      fc.tuple(
        fc.constantFrom(...designNames),
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 0, max: 40 }),
      ),
      { minLength: 1, maxLength: 6 },
    ),
    minutes: fc.constantFrom<number | string>('', 60, 120, 240),
    rest: fc.constantFrom('', 'Sun', 'Sat Sun'),
    sections: fc.constantFrom<readonly [number | string, number | string]>(
      ['', ''],
      [2, 45],
      [6, 90],
      [5, 2000],
    ),
  })
  .map(({ tables, plan, minutes, rest, sections }) => ({
    ...withSetting(withSetting(tables, 'Minutes per day', minutes), 'Rest days', rest),
    Lots: (tables['Lots'] ?? []).map((row, at) => (at === 0 ? row : row.with(-1, ''))),
    Molds: (tables['Molds'] ?? []).map((row, at) =>
      at === 0
        ? [...row, 'Sections', 'Set minutes', 'Loss %']
        : [...row, ...sections, at % 2 === 0 ? '' : 12.5],
    ),
    Plan: table(
      'Plan line | Design | Bars | Ready by',
      ...plan.map(([design, bars, day], at) => [`P${at}`, design, bars, LAST_DAY + day]),
    ),
  }));

/** The pours of a calendar, day by day: what is made in one sitting. */
function sittings(entries: readonly CalendarEntry[]): Map<number, BarsWanted[]> {
  const days = new Map<number, BarsWanted[]>();
  for (const { task, day, batch } of entries) {
    if (task !== 'pour') continue;
    days.set(day, [...(days.get(day) ?? []), { design: batch.design, bars: batch.bars }]);
  }
  return days;
}

const near = (a: Exact, b: Exact): boolean => a.minus(b).abs().lt('1e-9');

describe('one plan', () => {
  it('what supplies count is what the calendar’s sittings take, day by day', () => {
    fc.assert(
      fc.property(season, (tables) => {
        const book = readTables(tables);
        const { entries } = sure(calendar(book, LAST_DAY));
        const taken = new Map<Material, Exact>();
        const takenBy = new Map<string, Exact>();
        for (const [day, batches] of sittings(entries)) {
          // A design is poured once a day: two batches of it would be one.
          expect(new Set(batches.map(({ design }) => design)).size).toBe(batches.length);
          const first = Math.min(
            ...entries.filter(({ batch }) => batch.pourDay === day).map((entry) => entry.day),
          );
          const sitting = sure(planSitting(batches, book.settings, noLeftovers));
          for (const { material, quantity } of materialNeeds(sitting)) {
            addTo(taken, material, quantity);
            addTo(takenBy, `${material.name} ${first}`, quantity);
          }
        }
        const { lines } = sure(supplies(book, LAST_DAY));
        expect(lines.map(({ material }) => material.name).sort()).toEqual(
          [...taken.keys()].map(({ name }) => name).sort(),
        );
        for (const { material, gross, days } of lines) {
          expect(near(gross, taken.get(material) ?? zero), material.name).toBe(true);
          for (const { day, gross: ofDay } of days)
            expect(near(ofDay, takenBy.get(`${material.name} ${day}`) ?? zero)).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('no sitting fills more sections than there are', () => {
    fc.assert(
      fc.property(season, (tables) => {
        const book = readTables(tables);
        const { fillsOf } = capacityOf(book.settings);
        const fills = new Map<number, Map<Mold, Exact>>();
        const { entries } = sure(calendar(book, LAST_DAY));
        for (const [day, batches] of sittings(entries)) {
          // What is shaped ahead has its own days.
          if (entries.some(({ task, batch }) => task === 'shape' && batch.pourDay === day))
            continue;
          const sitting = sure(planSitting(batches, book.settings, noLeftovers));
          const filled = (mold: Mold, count: Exact): void => {
            // A fill that has not set by the next day is in the way then.
            for (let at = day; at < day + daysInMold(mold); at += 1) {
              const inUse = fills.get(at) ?? new Map<Mold, Exact>();
              addTo(inUse, mold, count);
              fills.set(at, inUse);
            }
          };
          for (const { shapes } of sitting.melts)
            for (const shape of shapes) filled(shape.mold, shape.fills);
          for (const { design, barsToStart } of sitting.batches)
            if (design.barMold !== undefined)
              filled(design.barMold, barsToStart.div(design.barMold.cavities).ceil());
        }
        for (const [day, inUse] of fills)
          for (const [mold, count] of inUse)
            expect(count.lte(fillsOf(mold)), `${mold.name} on ${day}`).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('what is bought is enough for what is planned, on every day', () => {
    fc.assert(
      fc.property(season, (tables) => {
        const book = readTables(tables);
        for (const { material, days, orders } of sure(supplies(book, LAST_DAY)).lines) {
          const there = onHand(book, itemOfMaterial(material), LAST_DAY);
          for (const { day } of days) {
            const wanted = sum(days.filter((other) => other.day <= day).map(({ gross }) => gross));
            const bought = sum(
              orders.filter(({ needBy }) => needBy <= day).map(({ packs }) => packs),
            ).times(material.packSize ?? zero);
            expect(there.plus(bought).gte(wanted), `${material.name} on ${day}`).toBe(true);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('every bar of the plan is in a batch, on hand, or said to find no day', () => {
    fc.assert(
      fc.property(season, (tables) => {
        const book = readTables(tables);
        const { entries, notices } = sure(calendar(book, LAST_DAY));
        const poured = entries
          .filter(({ task }) => task === 'pour')
          .reduce((total, { batch }) => total + batch.bars, 0);
        const missing = notices.reduce((total, { bars }) => total + bars, 0);
        const planned = book.plan.reduce((total, { bars }) => total + bars, 0);
        expect(poured + missing).toBe(planned);
      }),
      { numRuns: 60 },
    );
  });

  it('is what What now? goes by', () => {
    fc.assert(
      fc.property(season, (tables) => {
        const book = readTables(tables);
        const { entries, notices } = sure(calendar(book, LAST_DAY));
        const advice = pourAdvice(book, LAST_DAY);
        const steps = advice.filter(({ title }) => !title.startsWith('See to'));
        expect(advice.length - steps.length).toBe(notices.length);
        // The first work on each design, with its bars and its day.
        const first = new Map<string, string>();
        for (const { batch, day } of entries) {
          const { design, bars } = batch;
          if (!first.has(design.name)) first.set(design.name, `${bars} of ${design.name} ${day}`);
        }
        expect(
          steps
            .map(({ title, due }) => title.replace(/^.*? (\d+) bars? of (.*)$/u, `$1 of $2 ${due}`))
            .sort(),
        ).toEqual([...first.values()].sort());
        const orderBy = sure(supplies(book, LAST_DAY)).lines.flatMap((line) => line.orderBy ?? []);
        const due = orderAdvice(book, LAST_DAY).map((order) => order.due);
        if (orderBy.length > 0) expect(Math.min(...due)).toBeLessThanOrEqual(Math.min(...orderBy));
      }),
      { numRuns: 60 },
    );
  });
});
