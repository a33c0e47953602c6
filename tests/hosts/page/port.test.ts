import { beforeEach, describe, expect, it } from 'vitest';
import type { Change, HostPort, RowToWrite } from '../../../src/workbook/port.ts';
import { isOpen, type OpenPage, useOpenPage } from './open-page.ts';

const openPage = useOpenPage();
let open: OpenPage;

beforeEach(async () => {
  open = await openPage();
});

const moves = (...rows: RowToWrite[]): Change => ({
  appends: [{ table: 'Moves', idColumn: 'Entry', rows }],
  updates: [],
});
const used = (entry: string, quantity: number): RowToWrite => ({
  Entry: entry,
  Reason: 'used',
  Quantity: quantity,
});

describe('apply', () => {
  it('fills blank rows first, grows the table, answers again, and is in the file', async () => {
    const answer = await open.apply({
      ...moves(used('M-2', -40), { Entry: 'M-3', Material: '=HYPERLINK("x")', Quantity: 6 }),
      updates: [{ table: 'Materials', idColumn: 'Material', id: 'Teal mica', set: { 'Max %': 4 } }],
    });
    expect(answer).toEqual({ kind: 'applied' });
    expect(await open.values('Ask', 'B1:B3')).toEqual([['book of 8'], [8], [-284]]);
    expect(await open.formula('Ledger', 'C4')).toBe('');
    expect(await open.values('Ledger', 'A2:D4')).toEqual([
      ['M-1', 'used', 'Clear base', -250],
      ['M-2', 'used', '', -40],
      ['M-3', '', '=HYPERLINK("x")', 6],
    ]);
    const [save, ...rest] = open.server.saves;
    expect(rest).toEqual([]);
    const ledger = save?.edits.find(({ sheet }) => sheet === 'Ledger');
    expect(ledger?.tables[0]?.range.endRow).toBe(3);
    expect(ledger?.cells).toContainEqual({ row: 3, column: 2, value: '=HYPERLINK("x")' });
    const ask = save?.edits.find(({ sheet }) => sheet === 'Ask');
    expect(ask?.cells.find(({ row, column }) => row === 2 && column === 1)?.value).toBe(-284);
    await open.type('Ledger', 'D4', '16');
    expect(await open.values('Ask', 'B1:B3')).toEqual([['book of 8'], [8], [-274]]);
  });

  it('keeps text as the very text', async () => {
    await open.apply(moves({ Entry: '007', Reason: '25%', Material: 'TRUE', Quantity: '1e3' }));
    expect((await open.load()).find(({ name }) => name === 'Moves')?.rows[1]).toEqual([
      '007',
      '25%',
      'TRUE',
      '1e3',
    ]);
  });

  it('clears a row, in the file too, and fills it again with the next', async () => {
    await open.apply(moves(used('M-2', -40)));
    const was = { Entry: 'M-2', Reason: 'used', Material: '', Quantity: -40 };
    const change: Change = {
      appends: [],
      updates: [],
      removals: [{ table: 'Moves', idColumn: 'Entry', id: 'M-2', was }],
    };
    expect(await open.apply(change)).toEqual({ kind: 'applied' });
    expect(await open.apply(change)).toEqual({ kind: 'already there' });
    const saved = open.server.saves.at(-1)?.edits.find(({ sheet }) => sheet === 'Ledger');
    const cleared = saved?.cells.filter(({ row }) => row === 2).map(({ value }) => value);
    expect(new Set(cleared)).toEqual(new Set(['']));
    expect(await open.apply(moves(used('M-3', -7)))).toEqual({ kind: 'applied' });
    expect(await open.values('Ledger', 'A2:D3')).toEqual([
      ['M-1', 'used', 'Clear base', -250],
      ['M-3', 'used', '', -7],
    ]);
  });

  it('writes the same rows once', async () => {
    await open.apply(moves(used('M-2', -40)));
    expect(await open.apply(moves(used('M-2', -40)))).toEqual({ kind: 'already there' });
    expect(open.server.saves).toHaveLength(1);
  });

  it('refuses when the table cannot grow, and writes nothing', async () => {
    const rows = Array.from({ length: 5 }, (_, index) => used(`N-${String(index)}`, 1));
    const before = await open.load();
    expect(await open.apply(moves(...rows))).toEqual({
      kind: 'refused',
      sentence:
        'The table Moves cannot grow: the cells below it are not empty. ' +
        'Move what stands there, then try again.',
    });
    expect(await open.load()).toEqual(before);
    expect(open.server.saves).toEqual([]);
  });

  it('takes all back when the file cannot be written', async () => {
    const before = await open.load();
    open.server.refuse('The disk is full.');
    const answer = await open.apply(moves(used('M-2', -40), used('M-3', -1)));
    expect(answer).toEqual({ kind: 'refused', sentence: 'The disk is full.' });
    expect(await open.load()).toEqual(before);
    await expect.poll(() => open.values('Ask', 'B1:B3')).toEqual([['book of 7'], [7], [-250]]);
    open.server.refuse(undefined);
    expect(await open.apply(moves(used('M-2', -40)))).toEqual({ kind: 'applied' });
    expect(await open.values('Ask', 'B1:B3')).toEqual([['book of 7'], [7], [-290]]);
    expect(open.server.saves.flatMap(({ edits }) => edits.flatMap(({ tables }) => tables))).toEqual(
      [],
    );
  });
});

describe('a change made outside', () => {
  it('is noticed at once, and nothing is written over it', async () => {
    open.server.changeOutside();
    await open.page.getByRole('button', { name: 'Load the new version' }).waitFor();
    await open.type('Ledger', 'D2', '-1');
    expect(await open.apply(moves(used('M-2', -40)))).toMatchObject({ kind: 'refused' });
    await open.page.getByText(/drops your cells/).waitFor();
    expect(open.server.saves).toEqual([]);
  });

  it('is noticed at the next save where no one told the page', async () => {
    const before = await open.load();
    open.server.changeOutside(true);
    expect(await open.apply(moves(used('M-2', -40)))).toMatchObject({ kind: 'refused' });
    expect(await open.load()).toEqual(before);
    expect(open.server.saves).toEqual([]);
    await open.page.getByRole('button', { name: 'Load the new version' }).waitFor();
  });

  it('offers the unsaved cells as text and then the new version', async () => {
    open.server.changeOutside();
    await open.type('Ledger', 'D2', '-1');
    const download = open.page.waitForEvent('download');
    await open.page.getByRole('button', { name: 'Keep my cells as a text file' }).click();
    const stream = await (await download).createReadStream();
    let text = '';
    for await (const chunk of stream) text += String(chunk);
    expect(text.split('\n')).toContain('Ledger\tD2\t-1');
    await open.page.getByRole('button', { name: 'Load the new version' }).click();
    await isOpen(open.page);
    await open.saysSaved();
    await expect.poll(() => open.values('Ledger', 'D2')).toEqual([[-250]]);
  });
});

it('says why it could not save, and saves when asked again', async () => {
  open.server.refuse('The disk is full.');
  await open.type('Ledger', 'D2', '-1');
  await open.saysSaved('Not saved: The disk is full.');
  open.server.refuse(undefined);
  await open.page.getByRole('button', { name: 'Try again' }).click();
  await open.saysSaved();
  expect(open.server.saves).toHaveLength(1);
});

it('tells of edits inside tables only, and remembers by workbook', async () => {
  const told = await open.page.evaluate(async () => {
    const { port } = document.querySelector('test-pane') as unknown as { port: HostPort };
    let count = 0;
    const stop = port.onChange(() => (count += 1));
    await port.apply({
      appends: [],
      updates: [{ table: 'Moves', idColumn: 'Entry', id: 'M-1', set: { Quantity: -9 } }],
    });
    stop();
    port.memory.set('flow', 'step 2');
    return [
      count,
      port.memory.get('flow'),
      port.memory.get('none'),
      port.newToken().length,
    ] as const;
  });
  // Ten of 32 letters: 50 bits.
  expect(told).toEqual([1, 'step 2', undefined, 10]);
  await expect.poll(() => [...open.server.texts]).toEqual([['flow', 'step 2']]);
  // Nothing of it stays in the browser, where another workbook could come upon it.
  expect(await open.page.evaluate(() => localStorage.length)).toBe(0);
});
