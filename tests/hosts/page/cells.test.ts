import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type axeCore from 'axe-core';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type OpenPage, useOpenPage } from './open-page.ts';

const AXE = fileURLToPath(import.meta.resolve('axe-core'));

const openPage = useOpenPage();
let open: OpenPage;

const openAnew = async () => {
  open = await openPage();
};

/** The next test goes on in the same page, and looks only at what it saves itself: opening takes longer than most tests. */
const goOn = async () => {
  await open.saysSaved();
  open.server.forgetSaves();
  open.complaints.length = 0;
};

describe('functions in cells', () => {
  beforeAll(openAnew);

  it.each([
    ['a function asked over whole tables, through a defined name', 'B1:B2', [['book of 7'], [7]]],
    ['a table column by its header', 'B3', [[-250]]],
    [
      'omitted, blank, boolean, text like a formula, text like a number',
      'B6',
      [['["Clear base","omitted",true,"","=x","1.5"]']],
    ],
    ['a column with a blank, its header holding a slash', 'C7', [['[[[1],[""],[1.5]]]']]],
    ['native functions over structured references', 'B8:C8', [[103, 103]]],
    [
      'a spilled list, its text left as it is',
      'B9:C11',
      [
        ['Colour', 'Tiles'],
        ['=A1', '25%'],
        ['', 7],
      ],
    ],
  ])('answers: %s', async (_, range, expected) => {
    expect(await open.values('Ask', range)).toEqual(expected);
  });

  it.each([
    ['B4', '#VALUE!', 'There is no design called that name.'],
    ['B5', '#N/A', 'Nothing to answer with yet: record a batch first.'],
    ['C5', '#DIV/0!', 'The whole is nothing.'],
    ['B7', '#VALUE!', 'A cell this formula asks shows #VALUE!: select that cell to read why.'],
  ])('shows why %s is %s when the cell is selected', async (cell, code, sentence) => {
    expect(await open.values('Ask', cell)).toEqual([[code]]);
    await open.select('Ask', cell);
    await open.page.getByText(`${cell} shows ${code}: ${sentence}`, { exact: true }).waitFor();
    await open.select('Ask', 'A1');
    await open.page.locator('#message').waitFor({ state: 'hidden' });
  });

  it('lets a formula catch a failure, without a message', async () => {
    expect(await open.values('Ask', 'C4')).toEqual([['caught']]);
  });

  it('knows a function typed in small letters and forgets a failure once it answers', async () => {
    await open.type('Ask', 'E1', '=pour.share(6,0)');
    expect(await open.failures('Ask', 'E1')).toEqual(['The whole is nothing.']);
    await open.type('Ask', 'E1', '=pour.share(6,4)');
    expect(await open.values('Ask', 'E1')).toEqual([[1.5]]);
    expect(await open.failures('Ask', 'E1')).toEqual([]);
  });
});

describe('editing by hand', () => {
  beforeAll(openAnew);
  beforeEach(goOn);

  it('answers dependents again and saves cells, formulas and their results', async () => {
    await open.type('Ledger', 'D2', '-300');
    expect(await open.values('Ask', 'B3')).toEqual([[-300]]);
    await open.saysSaved();
    expect(open.server.saves).toHaveLength(1);
    const [ledger, ask] = open.server.saves[0]?.edits ?? [];
    expect(ledger).toEqual({
      sheet: 'Ledger',
      cells: [{ row: 1, column: 3, value: -300 }],
      tables: [],
    });
    expect(ask?.sheet).toBe('Ask');
    expect(ask?.cells).toContainEqual({
      row: 2,
      column: 1,
      value: -300,
      formula: '=POUR.TOTAL(Moves[Quantity])',
    });
    expect(ask?.cells).toContainEqual({
      row: 8,
      column: 1,
      value: 'Colour',
      formula: '=POUR.LIST()',
      spill: [
        ['Colour', 'Tiles'],
        ['=A1', '25%'],
        ['', 7],
      ],
    });
  });

  it('answers a formula in a row that never held one, typed and taken back', async () => {
    await open.type('Shelf', 'F3', '=1+1');
    await open.type('Shelf', 'G3', '=F3*10');
    expect(await open.values('Shelf', 'F3:G3')).toEqual([[2, 20]]);
    await open.type('Shelf', 'F3', '5');
    expect(await open.values('Shelf', 'G3')).toEqual([[50]]);
    await open.page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => open.values('Shelf', 'F3:G3')).toEqual([[2, 20]]);
    // The keys go on into the grid.
    await open.type('Shelf', 'E2', '1');
    expect(await open.values('Shelf', 'E2')).toEqual([[1]]);
    expect(await open.formula('Shelf', 'F3')).toBe('=1+1');
  });

  it('lengthens a table when one types right below it, and BOOK sees the row', async () => {
    await open.type('Shelf', 'A5', 'Foam white');
    expect(await open.values('Ask', 'B1')).toEqual([['book of 8']]);
    // Once more: the engine must not fall back to the table as it was first parsed.
    await open.type('Shelf', 'D5', '50');
    expect(await open.values('Ask', 'B1')).toEqual([['book of 8']]);
    expect(await open.values('Ask', 'B8:C8')).toEqual([[153, 153]]);
    await open.saysSaved();
    // The two edits may be saved together or one by one.
    const lengthened = open.server.saves.flatMap(({ edits }) => edits[0]?.tables ?? []);
    expect(lengthened).toEqual([
      {
        name: 'Materials',
        range: { startRow: 0, startColumn: 0, endRow: 4, endColumn: 3 },
        headers: ['Material', 'Unit', 'Density g/ml', 'Max %'],
      },
    ]);
  });

  it('takes rows below a table into it with one left blank, and in the table’s look', async () => {
    await open.type('Odds & ends', 'A5', 'ladle');
    expect((await open.load()).find(({ name }) => name === 'Odds')?.rows).toEqual([
      ['jug'],
      ['sieve'],
      [''],
      ['ladle'],
    ]);
    expect(await open.look('Odds & ends', 'A5')).toMatchObject({ fill: '#E8F1F4' });
    // What stands further down stays what it is.
    await open.type('Ledger', 'A4', 'M-2');
    const moves = (await open.load()).find(({ name }) => name === 'Moves');
    expect(moves?.rows.map(([entry]) => entry)).toEqual(['M-1', '', 'M-2']);
  });

  it('keeps text that looks like a formula as text, even opened and left with Enter', async () => {
    const text = '=HYPERLINK("http://example.invalid","click")';
    await open.select('Shelf', 'A4');
    await open.page.keyboard.press('F2');
    await open.page.keyboard.press('Enter');
    await open.type('Shelf', 'C3', '1.1');
    expect(await open.formula('Shelf', 'A4')).toBe('');
    expect(await open.values('Shelf', 'A4')).toEqual([[text]]);
    await open.saysSaved();
    for (const { edits } of open.server.saves) {
      for (const cell of edits.flatMap(({ cells }) => cells)) {
        if (cell.value === text) expect(cell.formula).toBeUndefined();
      }
    }
  });

  it('undoes by button', async () => {
    const before = await open.values('Ask', 'B3');
    await open.type('Ledger', 'D2', '-12345');
    expect(await open.values('Ask', 'B3')).not.toEqual(before);
    await open.page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => open.values('Ask', 'B3')).toEqual(before);
  });

  it('refuses what the file would lose, with a sentence', async () => {
    await open.select('Shelf', 'A2');
    await open.page.keyboard.press('Control+b');
    await open.page.getByText(/changes what is in cells only/).waitFor();
    await open.page.getByText('Ledger', { exact: true }).dblclick();
    await open.page.keyboard.type('Other');
    await open.page.keyboard.press('Enter');
    expect(await open.values('Ledger', 'A1')).toEqual([['Entry']]);
    expect(open.server.saves).toEqual([]);
    expect(open.complaints).toEqual([]);
  });
});

describe('the page', () => {
  beforeAll(openAnew);
  beforeEach(goOn);

  it('says what it is, keeps to its own address and complains of nothing', async () => {
    expect(await open.page.title()).toBe('quay soaps.xlsx – Pour Ledger');
    for (const name of ['Workbook', 'Record and look up']) {
      await open.page.getByLabel(name, { exact: true }).waitFor();
    }
    await open.page
      .getByText('Kept in the file but not shown here: 2 charts on Costing.')
      .waitFor();
    await open.type('Shelf', 'C3', '1.2');
    await open.saysSaved();
    expect(open.complaints).toEqual([]);
  });

  it('offers the drop-down of a list and follows it', async () => {
    await open.select('Shelf', 'B3');
    const box = await open.page.locator('[id^=univer-sheet-main-canvas]').boundingBox();
    // Row headers 46 px wide, column A 240 px, B 88 px; column headers 20 px high, rows 24 px.
    await open.page.mouse.click((box?.x ?? 0) + 46 + 240 + 88 - 11, (box?.y ?? 0) + 20 + 60);
    await open.page.getByText('each', { exact: true }).click();
    await expect.poll(() => open.values('Shelf', 'B3')).toEqual([['each']]);
    await open.saysSaved();
  });

  it('takes what is typed into a cell with a list, key by key, and goes on with Tab', async () => {
    await open.select('Shelf', 'B4');
    await open.page.keyboard.type('each', { delay: 20 });
    await open.page.keyboard.press('Tab');
    await open.page.keyboard.type('1.25', { delay: 20 });
    await open.page.keyboard.press('Enter');
    await expect.poll(() => open.values('Shelf', 'B4:C4')).toEqual([['each', 1.25]]);
  });

  it('lists names that were typed below their table', async () => {
    await open.type('Odds & ends', 'A4', 'ladle');
    await open.select('Odds & ends', 'C2');
    await open.page.keyboard.press('F2');
    await open.page.locator('[data-u-comp=sheets-dropdown-list]').getByText('ladle').click();
    await expect.poll(() => open.values('Odds & ends', 'C2')).toEqual([['ladle']]);
  });

  it('shows a cell of a table, with the keys going into it', async () => {
    await open.page.getByLabel('Note').click();
    await open.show({ table: 'moves', row: 2, header: 'Quantity' });
    await open.page.keyboard.type('7');
    await open.page.keyboard.press('Enter');
    await expect.poll(() => open.values('Ledger', 'D3')).toEqual([[7]]);
    await open.show({ table: 'Nowhere', row: 1 });
    await open.saysSaved();
  });

  it('leaves the keyboard to the pane while one types there', async () => {
    const before = await open.values('Ledger', 'D1:D3');
    await open.select('Ledger', 'D2');
    const note = open.page.getByLabel('Note');
    await note.click();
    await open.page.keyboard.type('12 bars=');
    await open.page.keyboard.press('Backspace');
    await open.page.keyboard.press('Delete');
    await open.page.keyboard.press('ArrowLeft');
    await open.page.keyboard.press('Enter');
    expect(await note.inputValue()).toBe('12 bars');
    expect(await open.values('Ledger', 'D1:D3')).toEqual(before);
    expect(open.server.saves).toEqual([]);
  });

  it('hides and shows the pane by keyboard', async () => {
    const toggle = open.page.getByRole('button', { name: 'Hide the pane' });
    await toggle.focus();
    await open.page.keyboard.press('Enter');
    await open.page.getByText('The pane stands here.').waitFor({ state: 'hidden' });
    await open.page.keyboard.press('Enter');
    await open.page.getByText('The pane stands here.').waitFor();
  });
});

describe('the page with all that it can say', () => {
  beforeAll(async () => {
    await openAnew();
    await open.select('Ask', 'B4');
    await open.page.locator('#message').waitFor();
    open.server.changeOutside();
    await open.page.getByRole('button', { name: 'Load the new version' }).waitFor();
    await open.page.evaluate(await readFile(AXE, 'utf8'));
  });

  it.each(['light', 'dark'] as const)(
    'has no finding of axe around the grid, %s',
    async (scheme) => {
      await open.page.emulateMedia({ colorScheme: scheme });
      const findings = await open.page.evaluate(async () => {
        const { axe } = window as unknown as { axe: typeof axeCore };
        // The grid's own insides are the library's.
        const { violations } = await axe.run({ exclude: ['#grid'] });
        return violations.map(
          ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`,
        );
      });
      expect(findings).toEqual([]);
    },
  );
});
