import { describe, expect, it } from 'vitest';
import type { Book, Move } from '../../../src/domain/book/book.ts';
import { findBatch } from '../../../src/domain/book/find.ts';
import { trace } from '../../../src/domain/trace/trace.ts';
import { post, readTables, sure } from '../../support/ledger-of.ts';
import { day, pourOf } from '../../support/pour-of.ts';
import { type Tables, workshop } from '../../support/small-book.ts';

/**
 * What a batch record must hold. ISO 22716:2007, 7.2.1.2: the formula, and a list of all raw materials
 * with their batch numbers and quantities; 7.2.3.1: a batch number for each batch, that leads to the
 * one on the label (both read on a national body's public copy of the page, ctfa.co.za, SANS
 * 22716:2011, p. 12). By whom and on which day: common practice for such records.
 */
const poured = day('2024-03-01');
const record = (tables: Tables, batch: string, useLeftovers: boolean): Tables => {
  const made = post(
    tables,
    pourOf('Tide Pool', 6, { batch, poured, useLeftovers, by: 'Ada', note: 'a little thick' }),
    poured,
  );
  if (made === undefined) throw new Error('The pour was refused.');
  return made.after;
};
const usedBy = (book: Book, batch: string): readonly Move[] =>
  book.ledger.moves.filter((move) => move.batch === batch && move.reason === 'used');

const first = record(workshop, 'B1', false);
const book = readTables(record(first, 'B2', true));

describe('a recorded batch, read back from the workbook', () => {
  it('has a number of its own, the design that is its formula, a day, a count and a name', () => {
    expect(sure(findBatch(book.batches, 'B1'))).toMatchObject({
      batch: 'B1',
      design: { name: 'Tide Pool' },
      poured,
      bars: 6,
      good: 6,
      seconds: 0,
      by: 'Ada',
      note: 'a little thick',
    });
    expect(sure(findBatch(book.batches, 'B2')).batch).toBe('B2');
  });

  it('lists every material of its formula, each with the lot it came from and a quantity', () => {
    const used = usedBy(book, 'B1');
    // Tide Pool by hand: both bases, mica, drops, oil, glycerin, alcohol and box.
    expect(new Set(used.map(({ item }) => item.name))).toEqual(
      new Set([...book.materials.values()].map(({ name }) => name)),
    );
    const lots = new Map(book.lots.map(({ lot, material }) => [lot, material.name]));
    for (const move of used) {
      expect(lots.get(move.lot)).toBe(move.item.name);
      expect(move.quantity).toBeLessThan(0);
      expect(move).toMatchObject({ when: poured, by: 'Ada' });
    }
  });

  it('says how much of a material came from each lot, as its cards said', () => {
    // By hand: 6 bars take 108 Slate and 54 Mist tiles, 3 and 2 fills of 25 g; 15 g of 25 g Mist are
    // Slate: 75 + 30 = 105 g of Slate, of which 3 %, 3.15 g, are mica: 3.2 g on a scale.
    const mica = usedBy(book, 'B1').filter(({ item }) => item.name === 'Blue mica');
    expect(mica.map(({ lot }) => lot)).toEqual(['M1']);
    expect(mica[0]?.quantity).toBe(-3.2);
  });

  it('leads from soap and tiles left over by another batch back to that batch’s lots', () => {
    const made = usedBy(book, 'B2').filter(({ item }) => item.kind !== 'material');
    expect(made.length).toBeGreaterThan(0);
    for (const move of made) expect(move).toMatchObject({ lot: 'B1', when: poured });
    const lots = new Set(sure(trace(book, 'B2')).map(({ lot }) => lot));
    for (const { lot } of usedBy(book, 'B1').filter(({ item }) => item.name === 'Blue mica'))
      expect(lots).toContain(lot);
  });

  it('carries its number on the bars it made, and on what it left over', () => {
    const made = book.ledger.moves.filter(
      ({ batch, reason }) => batch === 'B1' && reason !== 'used' && reason !== 'reversed',
    );
    expect(new Set(made.map(({ reason }) => reason))).toEqual(new Set(['spare', 'made']));
    for (const { lot } of made) expect(lot).toBe('B1');
  });
});
