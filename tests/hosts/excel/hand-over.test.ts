import { describe, expect, it } from 'vitest';
import { handedOver, nearTheLimit } from '../../../src/hosts/excel/hand-over.ts';
import type { TableData } from '../../../src/workbook/port.ts';
import { demoTables } from '../../../src/starter/demo/demo-tables.ts';
import { tableData, workshop } from '../../support/small-book.ts';
import { MOST_BYTES } from './host/excel-host.ts';
import { withLedger } from './host/long-ledger.ts';
import { bookCells, modelOf, withBookCells } from './host/model-of.ts';
import { open } from './host/open.ts';

/** What the pane says of a ledger of so many lines, and what its Book cell shows where Excel on the web holds it. */
async function onTheWeb(lines: number): Promise<{ said: string | undefined; shows: unknown }> {
  const model = withBookCells(modelOf(withLedger(workshop, lines)), { handle: '', onHand: 0 });
  model.calculation.mostBytes = MOST_BYTES;
  model.calculation.answer = () => 'worked out';
  const book = { row: 0, column: 0, height: 1, width: 1 };
  model.calculation.setDirty(model.sheet('Start'), book);
  model.calculation.recalculate();
  let said: string | undefined;
  const { port } = open(model, { onRead: (tables) => void (said = nearTheLimit(tables)) });
  await port.load();
  return { said, shows: bookCells(model).handle };
}

describe('what BOOK is handed in one call', () => {
  it('has the figures that DEVELOPERS.md tells of the demo', () => {
    const demo = demoTables();
    const [moves] = demo.filter(({ name }) => name === 'LedgerLines');
    const ledger = handedOver(moves === undefined ? [] : [moves]);
    // A line of the ledger by itself, then with what stands for it in the other tables.
    expect(ledger.bytes / ledger.lines).toBeCloseTo(79, -1);
    expect(ledger.mostLines / 1000).toBeCloseTo(63, -1);
    expect(handedOver(demo).mostLines / 1000).toBeCloseTo(42, -1);
    expect(nearTheLimit(demo)).toBeUndefined();
  });

  it('is measured in bytes, not in letters', () => {
    const [plain, long] = ['x', 'é'].map((letter) =>
      handedOver(tableData({ ...workshop, Settings: [...(workshop['Settings'] ?? []), [letter]] })),
    );
    expect((long?.bytes ?? 0) - (plain?.bytes ?? 0)).toBe(1);
  });

  it('leaves other tables of the workbook out', () => {
    const other: TableData = { name: 'Own', headers: ['Notes'], rows: Array(9e5).fill(['12345']) };
    expect(nearTheLimit([...tableData(workshop), other])).toBeUndefined();
  });
});

describe('a ledger that grows, on the web', () => {
  it('is said to come near the limit well before the cell named Book fails', async () => {
    const most = handedOver(tableData(withLedger(workshop, 10_000))).mostLines;
    const far = await onTheWeb(Math.floor(most * 0.7));
    expect(far).toEqual({ said: undefined, shows: 'worked out' });
    const near = await onTheWeb(Math.floor(most * 0.9));
    expect(near.said).toMatch(
      /^Your ledger has [\d,]+ lines\. .* at most about [\d,]+ of .*Windows/,
    );
    expect(near.said).toContain('Before that, open it in Excel for Windows or Mac');
    expect(near.shows).toBe('worked out');
    const over = await onTheWeb(Math.ceil(most * 1.1));
    expect(over.shows).toBe('#BUSY!');
    expect(over.said).toMatch(/so the cell named Book may fail here: open it in Excel for Windows/);
  });
});
