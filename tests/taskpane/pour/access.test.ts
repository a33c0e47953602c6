import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkAccess, type Places, tabTo } from '../access-checks.ts';
import { createPaneWorkshop, type PaneWorkshop } from '../pane-page.ts';
import { smallWorkshop, withRows } from '../small-workshop.ts';

let workshop: PaneWorkshop;

beforeAll(async () => {
  workshop = await createPaneWorkshop();
});
afterAll(() => workshop.close());

/** Every page of the flow, each reached from the one before. */
const places: Places = [
  ['choose, with a problem', (page) => page.locator('#next').click()],
  [
    'choose',
    async (page) => {
      await page.locator('#design').selectOption('Harbour Light');
      await page.locator('#bars').fill('60');
    },
  ],
  ['weigh out, short', (page) => next(page, 'weigh')],
  [
    'what came out, with a problem',
    async (page) => {
      await page.locator('pour-weigh fluent-checkbox').first().click();
      await next(page, 'outcome');
      await page.locator('summary').click();
      await page.getByLabel('Pearl mica').fill('12x');
      await page.locator('#next').click();
    },
  ],
  [
    'look over, short',
    async (page) => {
      await page.getByLabel('Pearl mica').fill('2');
      await next(page, 'preview');
    },
  ],
  [
    'look over',
    async (page) => {
      await page.getByText('My count of Clear base is off').click();
      await page.getByText('My count of Sweet orange is off').click();
      await page.locator('#record').waitFor();
    },
  ],
  [
    'recorded',
    async (page) => {
      await page.locator('#record').click();
      await page.locator('pour-done').waitFor();
    },
  ],
  ['undo?', (page) => page.locator('#undo').click()],
  [
    'undone',
    async (page) => {
      await page.locator('#yes').click();
      await page.locator('pour-done h2').getByText('Undone').waitFor();
    },
  ],
  ['again, with last batches', (page) => page.locator('#another').click()],
  [
    'tables to mend',
    async (page) => {
      await page.evaluate(
        (bad) => {
          window.pane.port.edit(() => bad);
        },
        withRows(smallWorkshop, 'Lots', (rows) => rows.map((row) => row.with(3, 'x'))),
      );
      await page.locator('pour-findings').waitFor();
    },
  ],
];

async function next(page: Page, step: string): Promise<void> {
  await page.locator('#next').click();
  await page.locator(`pour-${step}`).waitFor();
}

checkAccess(places);

describe('what the browser tells a screen reader', () => {
  it('names ticks with the amount, and moves to the heading of each step', async () => {
    const opened = await workshop.open();
    const { page } = opened;
    await page.locator('#design').selectOption('Harbour Light');
    await page.locator('#bars').fill('6');
    await next(page, 'weigh');
    const client = await page.context().newCDPSession(page);
    const { nodes } = await client.send('Accessibility.getFullAXTree');
    const ticks = nodes
      .filter((node) => node.role?.value === 'checkbox')
      .map((node) => node.name?.value);
    const inFocus = nodes.find(
      (node) =>
        node.properties?.some(({ name, value }) => name === 'focused' && value.value === true) &&
        node.role?.value === 'heading',
    );
    await opened.close();
    expect(ticks).toHaveLength(12);
    expect(ticks[0]).toMatch(/Blue leftover\s+melt this first\s+12 g/u);
    expect(inFocus?.name?.value).toBe('Weigh out');
  });
});

describe('the keyboard alone', () => {
  it('records a pour and undoes it, with the focus always to be seen', async () => {
    const opened = await workshop.open();
    const { page } = opened;
    page.setDefaultTimeout(10_000);
    await tabTo(page, 'design');
    await page.keyboard.type('Harb');
    await tabTo(page, 'bars');
    await page.keyboard.type('6');
    await tabTo(page, 'next');
    await page.keyboard.press('Enter');
    await page.locator('pour-weigh').waitFor();
    await tabTo(page, 'tick-1-0');
    await page.keyboard.press('Space');
    await page.getByText('1 of 12 lines ticked.').waitFor();
    await tabTo(page, 'next');
    await page.keyboard.press('Enter');
    await page.locator('pour-outcome').waitFor();
    await tabTo(page, 'good');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('5');
    await tabTo(page, 'next');
    await page.keyboard.press('Space');
    await page.locator('pour-preview').waitFor();
    await tabTo(page, 'record');
    await page.keyboard.press('Enter');
    await page.locator('pour-done').waitFor();
    await tabTo(page, 'undo');
    await page.keyboard.press('Enter');
    await page.locator('#question').waitFor();
    await tabTo(page, 'yes');
    await page.keyboard.press('Enter');
    await page.locator('pour-done h2').getByText('Undone').waitFor();
    const states = await page.evaluate(() =>
      window.pane.port.tables.find(({ name }) => name === 'Batches')?.rows.map((row) => row[10]),
    );
    await opened.close();
    expect(states).toEqual(['posted', 'undone']);
  });
});
