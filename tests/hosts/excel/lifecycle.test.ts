import { describe, expect, it } from 'vitest';
import { healBook } from '../../../src/hosts/excel/heal-book.ts';
import type { Cell } from '../../../src/workbook/port.ts';
import { loadOnce } from '../../support/worksheet-functions.ts';
import { ranges, workshop } from '../../support/small-book.ts';
import { FLOWS } from './flows.ts';
import { bookCells, modelOf, withBookCells } from './host/model-of.ts';
import { open, type Opened, untilAllIsStill } from './host/open.ts';
import type { WorkbookModel } from './host/workbook-model.ts';

/** What the workbook was saved with, by functions whose memory is gone; 51 to tell it from worked out. */
const saved = { handle: (await loadOnce())('BOOK', ...ranges(workshop)) as string, onHand: 51 };

/** A workbook opened from a file, with the functions just loaded beside it. */
async function reopened(tables = workshop): Promise<Opened> {
  const model = withBookCells(modelOf(tables), saved);
  const call = await loadOnce();
  model.calculation.answer = (name, args) => call(name.replace('POUR.', ''), ...args) as Cell;
  return open(model);
}

const heal = ({ runLater }: Opened): Promise<Cell | undefined> => healBook(runLater);

describe('a workbook reopened', () => {
  it('shows what it was saved with, and asks for its book before an answer alone is worked out', async () => {
    const { model } = await reopened();
    expect(bookCells(model)).toEqual(saved);
    model.calculation.setDirty(model.sheet('Start'), { row: 1, column: 0, height: 1, width: 1 });
    model.calculation.recalculate();
    expect(bookCells(model)).toEqual({ ...saved, onHand: '#N/A' });
  });

  it('is healed in two syncs: the book first, then what hangs on it', async () => {
    const opened = await reopened();
    expect(await heal(opened)).toBe(saved.handle);
    const { handle, onHand } = bookCells(opened.model);
    // The same content has the same handle.
    expect(handle).toBe(saved.handle);
    // 50 boxes in lot B1 of the small workshop, none of them used.
    expect(onHand).toBe(50);
    expect(opened.model.calculation.workedOut).toEqual(['POUR.BOOK', 'POUR.ONHAND']);
    expect(opened.host.syncs).toBe(2);
  });

  it('is healed where calculation is set to manual too', async () => {
    const opened = await reopened();
    opened.model.calculation.manual = true;
    await heal(opened);
    expect(bookCells(opened.model).onHand).toBe(50);
  });

  it.each<[string, (model: WorkbookModel) => void]>([
    ['without the name Book', (model) => model.names.clear()],
    ['whose name Book is no cell', (model) => void model.names.set('Book', 'a text')],
  ])('is left alone %s', async (_, arrange) => {
    const opened = await reopened();
    arrange(opened.model);
    expect(await heal(opened)).toBeUndefined();
    expect(bookCells(opened.model)).toEqual(saved);
    expect(opened.host.syncs).toBe(1);
  });
});

describe('what is written shows in the cells', () => {
  it.each([false, true])('at once, with calculation set to manual: %s', async (manual) => {
    const [pour] = FLOWS;
    const opened = await reopened(pour?.tables);
    opened.model.calculation.manual = manual;
    await heal(opened);
    if (pour !== undefined) await opened.port.apply(pour.change);
    // The pour packs 12 bars, a box each.
    expect(bookCells(opened.model).onHand).toBe(38);
  });
});

describe('changes by anyone’s hand', () => {
  it.each(['Remote', 'Local'] as const)('are told of, without asking again: %s', async (source) => {
    const { model, host, port } = await reopened();
    let heard = 0;
    port.onChange(() => (heard += 1));
    await untilAllIsStill();
    const { syncs } = host;
    model.table('Materials').setCell(0, 0, 'Other base', source);
    await untilAllIsStill();
    expect(heard).toBe(1);
    expect(host.syncs).toBe(syncs);
  });
});

describe('a cell being edited while the pane starts', () => {
  it('holds healing and listening back until it is done, and no longer', async () => {
    const opened = await reopened();
    const { model, host, port } = opened;
    model.cellBeingEdited = true;
    let heard = 0;
    port.onChange(() => (heard += 1));
    const healed = heal(opened);
    await untilAllIsStill();
    expect(bookCells(model)).toEqual(saved);
    host.endEditing();
    expect(await healed).toBe(saved.handle);
    expect(bookCells(model).onHand).toBe(50);
    model.table('Materials').setCell(0, 0, 'Other base');
    await untilAllIsStill();
    expect(heard).toBe(1);
  });
});
