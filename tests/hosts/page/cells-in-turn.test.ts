import fc from 'fast-check';
import { expect, it } from 'vitest';
import { createBookPort } from '../../../src/hosts/workbench/page/book-port.ts';
import { createCellsInTurn } from '../../../src/hosts/workbench/page/cells-in-turn.ts';
import { createImageCells } from '../../../src/hosts/workbench/page/image-cells.ts';
import { createLiveTables } from '../../../src/hosts/workbench/page/live-tables.ts';
import type { Saver } from '../../../src/hosts/workbench/page/saver.ts';
import { anyChange } from '../../contract/any-change.ts';
import { imageOf, takesEverySave } from '../../contract/case-image.ts';
import { inReadCells } from '../../contract/change-hosts.ts';
import { memoryOf } from '../../support/memory-port.ts';
import type { Tables } from '../../support/small-book.ts';

type Moment = 'before' | 'while saving' | 'after';

/** A port whose cells pass to another holder at a moment of the change; that holder began with the same image. */
function passing(tables: Tables, moment: Moment, takes: boolean) {
  const image = imageOf(tables, []);
  const sheets = createCellsInTurn(createImageCells(image));
  const next = createImageCells(image);
  let isPassed = false;
  const pass = (now: Moment) => {
    if (now !== moment || isPassed) return;
    isPassed = true;
    sheets.handOver(next);
  };
  const saver: Saver = {
    ...takesEverySave,
    saveNow() {
      pass('while saving');
      return Promise.resolve(
        takes
          ? { kind: 'saved', version: '2' }
          : { kind: 'refused', sentence: 'The disk is full.' },
      );
    },
  };
  const live = createLiveTables(sheets, image);
  const port = createBookPort({
    sheets,
    tables: live,
    saver,
    select: () => Promise.resolve(),
    memory: memoryOf(new Map()),
    brokenNames: [],
  });
  const inNext = () =>
    live.all().map(({ name, sheetId, range }) => ({
      name,
      rows: next.values(sheetId, { ...range, startRow: range.startRow + 1 }),
    }));
  return { port, pass, inNext };
}

const anyMoment = fc.constantFrom<Moment>('before', 'while saving', 'after');

it('a change is whole in whoever holds the cells next, at whatever moment they pass', () =>
  fc.assert(
    fc.asyncProperty(anyChange, anyMoment, async ([tables, change], moment) => {
      const { port, pass, inNext } = passing(tables, moment, true);
      pass('before');
      const said = await port.apply(change);
      pass('while saving');
      pass('after');
      const alone = await inReadCells(tables, [], change);
      expect(said).toEqual(alone.said);
      expect(inNext()).toEqual(alone.tables.map(({ name, rows }) => ({ name, rows })));
    }),
    { numRuns: 300 },
  ));

it('a change that could not be saved is taken back in whoever holds the cells next', () =>
  fc.assert(
    fc.asyncProperty(anyChange, anyMoment, async ([tables, change], moment) => {
      const { port, pass, inNext } = passing(tables, moment, false);
      pass('before');
      const before = (await port.load()).map(({ name, rows }) => ({ name, rows }));
      const said = await port.apply(change);
      pass('while saving');
      pass('after');
      expect(said.kind).not.toBe('applied');
      expect(inNext()).toEqual(before);
    }),
    { numRuns: 300 },
  ));
