import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type OpenPage, useOpenPage } from './open-page.ts';

const openPage = useOpenPage();
let open: OpenPage;
// One page for all: none changes what a later one looks at.
beforeAll(async () => {
  open = await openPage();
});
afterEach(() => {
  expect(open.complaints).toEqual([]);
});

describe('how a sheet looks', () => {
  it('gives large and wrapped text the height it needs, and keeps heights set by hand', async () => {
    await open.select('Looks', 'A1');
    const heights = await Promise.all(
      ['A1', 'A2', 'A3', 'A4'].map(async (cell) => (await open.look('Looks', cell)).height),
    );
    const [title = 0, plain = 0, byHand = 0, wrapped = 0] = heights;
    // 24 points are 32 pixels; a line of them takes somewhat more.
    expect(title).toBeGreaterThan(32);
    expect(plain).toBe(24);
    expect(byHand).toBe(60);
    expect(wrapped).toBeGreaterThan(2 * plain);
    expect(open.server.saves).toEqual([]);
  });

  it('highlights cells where the formula is true, and only those', async () => {
    await open.select('Looks', 'A1');
    const fill = async (cell: string) => (await open.look('Looks', cell)).fill;
    await expect.poll(() => fill('A6')).toBe('#FBE0CF');
    expect(await fill('A5')).toBe('');
    await open.type('Looks', 'B5', '8');
    await expect.poll(() => fill('A5')).toBe('#FBE0CF');
  });
});

describe('a highlight of what formulas answer', () => {
  it('comes and goes with the answer, typed on another sheet', async () => {
    const rows = ['A7', 'A8', 'A9', 'A10', 'A11'];
    const highlighted = async () => {
      const looks = await Promise.all(rows.map((cell) => open.look('Looks', cell)));
      return rows.filter((_, index) => looks[index]?.fill === '#FBE0CF');
    };
    expect(await highlighted()).toEqual([]);
    await open.type('Ledger', 'D2', '500');
    await expect.poll(highlighted).toEqual(['A7', 'A8', 'A9']);
    await open.type('Ledger', 'D4', '7');
    await expect.poll(highlighted).toEqual(['A7', 'A8', 'A9', 'A11']);
    await open.type('Ledger', 'D2', '-500');
    await expect.poll(highlighted).toEqual(['A11']);
  });
});

describe('a choice of yes or no', () => {
  it('is a box to tick that keeps TRUE and FALSE', async () => {
    await open.select('Looks', 'A2');
    const box = await open.page.locator('[id^=univer-sheet-main-canvas]').boundingBox();
    const title = (await open.look('Looks', 'A1')).height;
    // Row headers 46 px wide, column A 88 px, the box in its middle; column headers 20 px high.
    await open.page.mouse.click((box?.x ?? 0) + 46 + 44, (box?.y ?? 0) + 20 + title + 12);
    await expect.poll(() => open.values('Looks', 'A2:C2')).toEqual([[true, 'sieve', 'yes']]);
    const saved = () =>
      open.server.saves.flatMap(({ edits }) => edits.flatMap(({ cells }) => cells));
    await expect.poll(saved).toContainEqual({ row: 1, column: 0, value: true });
  });
});

describe('the formula helper', () => {
  it('says what a function answers and what it asks for', async () => {
    await open.select('Ask', 'E1');
    await open.page.keyboard.type('=POUR.SHARE(');
    await open.page.getByText('What share one amount is of another.').last().waitFor();
    await open.page.getByText('The smaller amount.').waitFor();
    await open.page.getByText('whole amount').first().waitFor();
    await open.page.keyboard.press('Escape');
  });
});

describe('formulas that reach into a table of another sheet', () => {
  it.each([
    ['INDEX', 'B1', 'Teal mica'],
    ['INDEX, where the sheet’s name needs quotes', 'B2', 'sieve'],
    ['OFFSET', 'B3', 103],
    ['INDEX past the end', 'B4', 'none'],
  ])('%s', async (_, cell, expected) => {
    expect(await open.values('Looks', cell)).toEqual([[expected]]);
  });

  it('and follow it', async () => {
    await open.type('Odds & ends', 'A3', 'scales');
    expect(await open.values('Looks', 'B2')).toEqual([['scales']]);
  });
});
