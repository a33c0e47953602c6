import type { Page } from 'playwright-core';
import type { Cell, TableData } from '../../src/workbook/port.ts';

/** One of the pane's tasks, and the way through its pages. */
export interface TaskWalk {
  /** On its tab. */
  readonly name: string;
  /** A workbook in which there is something to do. */
  readonly tables: readonly TableData[];
  /** Every page in every state, each reached from the one before; the first from the task's tab. */
  readonly pages: Places;
}

/** The pages of a task, each reached from the one before. */
export type Places = readonly (readonly [string, (page: Page) => Promise<unknown>])[];

/** A task that writes. */
export interface WritingWalk extends TaskWalk {
  /** The page on its tab, the one before the preview, the preview, and the page after recording. */
  readonly steps: {
    readonly first: string;
    readonly enter: string;
    readonly preview: string;
    readonly done: string;
  };
  /** Fills in the pages before the preview. */
  readonly enter: (page: Page) => Promise<unknown>;
  /** The button to the preview. */
  readonly next: string;
  /** What recording that adds to the ends of columns. */
  readonly adds: readonly Added[];
}

/** A task that writes what is typed into a form. */
export interface FormWalk extends WritingWalk {
  /** What can't be: done on the blank page `enter`, the sentence that says so, the field to mend. */
  readonly refusals: readonly Refusal[];
  /** The same by keys alone, and what it adds. */
  readonly keys: readonly KeyStop[];
  readonly keysAdd: Added;
}

export type Added = readonly [table: string, header: string, cells: readonly Cell[]];

export type Refusal = readonly [
  what: string,
  go: (page: Page) => Promise<unknown>,
  sentence: string,
  field: string,
];

/** Tabs to a control (or stays), presses a key, types, and waits for what that shows. */
export interface KeyStop {
  readonly to?: string;
  readonly press?: string;
  readonly type?: string;
  readonly shows?: string;
}

/** The pages from a preview on, the same for every task: refused, half written, recorded. */
export const recordingPages = (done: string): Places => [
  [
    'refused',
    async (page) => {
      await page.evaluate(() => {
        window.pane.port.nextApply({ kind: 'refuses', sentence: 'The sheet is protected.' });
      });
      await page.locator('#record').click();
      await page.getByText('Nothing was written. The sheet is protected.').waitFor();
    },
  ],
  [
    'being written',
    async (page) => {
      await page.evaluate(() => {
        Object.assign(window, { release: window.pane.port.hold() });
        window.pane.port.nextApply({ kind: 'breaks halfway', rows: 1 });
      });
      await page.locator('#record').click();
      await page.getByText('Recording…').waitFor();
    },
  ],
  [
    'half written',
    async (page) => {
      await page.evaluate(() => {
        (window as unknown as { release(): void }).release();
      });
      await page.getByText('some of its lines are in the workbook').waitFor();
    },
  ],
  [
    'recorded',
    async (page) => {
      await page.locator('#record').click();
      await page.locator(done).waitFor();
    },
  ],
];

/** The pages from `recorded` on of a task that can be undone. */
export const undoingPages: Places = [
  ['undo?', (page) => page.locator('#undo').click()],
  [
    'undone',
    async (page) => {
      await page.locator('#yes').click();
      await page.locator('pour-pane h2').getByText('Undone').waitFor();
    },
  ],
  ['again, with the last ones', (page) => page.locator('#another').click()],
];
