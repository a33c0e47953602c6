import { html } from 'lit';
import { readDay } from '../../src/domain/kernel/day.ts';
import type { HostPort } from '../../src/workbook/port.ts';
import type { Session } from '../task/session.ts';
import type { Task } from '../task/task.ts';
import './costs-page.ts';
import { type CostsShown, keepShown, shownLast } from './shown.ts';

/** The pictures: nothing is written here, so there is no flow. */
export function costsTask(port: HostPort, session: Session, onChange: () => void): Task {
  let shown = shownLast(port.memory);
  return {
    name: 'costs',
    label: 'Costs',
    title: 'Costs and prices in pictures',
    page: () => 'look',
    content: ({ book }) =>
      html`<pour-costs
        .book=${book}
        .shown=${shown}
        .today=${readDay(port.today()) ?? 0}
      ></pour-costs>`,
    hear: (event) => {
      if (event.type === 'task-check-again') void session.read();
      if (event.type !== 'task-told') return;
      shown = { ...shown, ...(event as CustomEvent<Partial<CostsShown>>).detail };
      keepShown(port.memory, shown);
      onChange();
    },
    stop: () => undefined,
  };
}
