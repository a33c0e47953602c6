import { html } from 'lit';
import type { Look } from '../task/look-task.ts';
import './now-page.ts';

/** What now? Nothing is chosen here. */
export const nowLook: Look<Readonly<Record<never, string>>> = {
  name: 'now',
  label: 'Now',
  title: 'What now?',
  start: {},
  content: (book, today) => html`<pour-now .book=${book} .today=${today}></pour-now>`,
};
