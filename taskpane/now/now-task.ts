import { html } from 'lit';
import { readDay } from '../../src/domain/kernel/day.ts';
import type { HostPort } from '../../src/workbook/port.ts';
import type { Session } from '../task/session.ts';
import type { Task } from '../task/task.ts';
import './now-page.ts';

/** What now? Nothing is told or written here. */
export function nowTask(port: HostPort, session: Session): Task {
  return {
    name: 'now',
    label: 'Now',
    title: 'What now?',
    page: () => 'look',
    content: ({ book }) =>
      html`<pour-now .book=${book} .today=${readDay(port.today()) ?? 0}></pour-now>`,
    hear: (event) => {
      if (event.type === 'task-check-again') void session.read();
    },
    stop: () => undefined,
  };
}
