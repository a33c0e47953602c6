import { html } from 'lit';
import type { Look } from '../task/look-task.ts';
import './costs-page.ts';

/** Names of the design and the fair looked at; "" for the first and the next. */
export type CostsShown = Readonly<Record<'design' | 'fair', string>>;

/** The pictures of costs and prices. */
export const costsLook: Look<CostsShown> = {
  name: 'costs',
  label: 'Costs',
  title: 'Costs and prices in pictures',
  start: { design: '', fair: '' },
  content: (book, today, shown) =>
    html`<pour-costs .book=${book} .shown=${shown} .today=${today}></pour-costs>`,
};
