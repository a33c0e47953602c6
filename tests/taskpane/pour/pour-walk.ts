import type { Page } from 'playwright-core';
import { choose, walkTo } from '../pane-steps.ts';
import { smallWorkshop } from '../small-workshop.ts';
import { recordingPages, type Refusal, undoingPages, type FormWalk } from '../task-walk.ts';

const next = async (page: Page, step: string): Promise<void> => {
  await page.locator('#next').click();
  await page.locator(`pour-${step}`).waitFor();
};

/** What came out, with one figure that can't be. */
const outBut = (
  what: string,
  field: string,
  typed: string,
  sentence: string,
  toMend: string,
): Refusal => [
  what,
  async (page) => {
    await walkTo(page, 'outcome');
    await page.locator(field).fill(typed);
  },
  sentence,
  toMend,
];

/** A pour of six bars, of which all came out as planned. */
export const pourWalk: FormWalk = {
  name: 'pour',
  tables: smallWorkshop,
  next: '#next',
  steps: {
    first: 'pour-choose',
    enter: 'pour-outcome',
    preview: 'pour-preview',
    done: 'pour-done',
  },
  enter: (page) => walkTo(page, 'outcome'),
  adds: [
    ['Batches', 'Good', [6]],
    ['Batches', 'Design', ['Harbour Light']],
  ],
  refusals: [
    ['no design', async () => undefined, 'Choose a design.', 'design'],
    ['no bars', (page) => choose(page, ''), 'Good bars wanted is blank.', 'bars'],
    outBut('a word for bars', '#good', 'all', 'Good bars is "all".', 'good'),
    outBut('half a bar', '#good', '2.5', 'Good bars is 2.5. Type a whole number', 'good'),
    outBut(
      'more than was started',
      '#good',
      '7',
      '7 good and 0 seconds are more than the 6 bars started.',
      '',
    ),
  ],
  keys: [
    { to: 'design', type: 'Harb' },
    { to: 'bars', type: '6' },
    { to: 'next', press: 'Enter', shows: 'pour-weigh' },
    { to: 'tick-1-0', press: 'Space', shows: 'p:has-text("1 of 12 lines ticked.")' },
    { to: 'next', press: 'Enter', shows: 'pour-outcome' },
    { to: 'good', press: 'Control+A', type: '5' },
    { to: 'next', press: 'Space', shows: 'strong:has-text("1 not told of yet.")' },
    { to: 'lost', type: '1' },
    { to: 'next', press: 'Space', shows: 'pour-preview' },
    { to: 'record', press: 'Enter', shows: 'pour-done' },
    { to: 'undo', press: 'Enter', shows: '#question' },
    { to: 'yes', press: 'Enter', shows: 'h2:has-text("Undone")' },
  ],
  keysAdd: ['Batches', 'State', ['undone']],
  pages: [
    ['choose, with a problem', (page) => page.locator('#next').click()],
    ['choose', (page) => choose(page, '60')],
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
    ...recordingPages('pour-done'),
    ...undoingPages,
  ],
};
