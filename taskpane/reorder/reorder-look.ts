import { html } from 'lit';
import type { Look } from '../task/look-task.ts';
import './reorder-page.ts';

/** Name of the material looked at; "" for the first to order. */
export type ReorderShown = Readonly<Record<'material', string>>;

/** When to order a material again, and how sure that is. */
export const reorderLook: Look<ReorderShown> = {
  name: 'reorder',
  label: 'Reorder',
  title: 'When to order again',
  start: { material: '' },
  content: (book, today, shown) =>
    html`<pour-reorder .book=${book} .shown=${shown} .today=${today}></pour-reorder>`,
};
