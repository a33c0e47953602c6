import type { TemplateResult } from 'lit';
import type { Book } from '../../src/domain/book/book.ts';
import { type Day, readDay } from '../../src/domain/kernel/day.ts';
import type { HostMemory, HostPort } from '../../src/workbook/port.ts';
import { isRecord } from '../../src/domain/kernel/is-record.ts';
import { holdsTexts, keepAs, restoreAs } from './kept.ts';
import type { Session } from './session.ts';
import type { Task } from './task.ts';

/** What the maker looks at, such as a design's name; "" for the first there is. */
export type Shown = Readonly<Record<string, string>>;

/** A task that only shows: nothing is written, so there is no flow. */
export interface Look<S extends Shown> extends Pick<Task, 'name' | 'label' | 'title'> {
  /** What is looked at when it is first opened. */
  readonly start: S;
  readonly content: (book: Book, today: Day, shown: S) => TemplateResult;
}

const FORM = 1;

/** Shows a look; what is looked at is kept through reloads. */
export function lookTask<S extends Shown>(
  { name, label, title, start, content }: Look<S>,
  port: HostPort,
  session: Session,
  onChange: () => void,
): Task {
  const key = `${name} shown`;
  const isShown = (value: unknown): value is S =>
    isRecord(value) && holdsTexts(value, Object.keys(start));
  let shown = restoreAs(FORM, port.memory.get(key), isShown) ?? start;
  return {
    name,
    label,
    title,
    page: () => 'look',
    content: ({ book }) => content(book, readDay(port.today()) ?? 0, shown),
    hear: (event) => {
      if (event.type === 'task-check-again') void session.read();
      if (event.type !== 'task-told') return;
      shown = { ...shown, ...(event as CustomEvent<Partial<S>>).detail };
      keep(port.memory, key, shown);
      onChange();
    },
    stop: () => undefined,
  };
}

function keep(memory: HostMemory, key: string, shown: Shown): void {
  try {
    memory.set(key, keepAs(FORM, shown));
  } catch {
    // It is only a choice of what to look at; without room for it the pane begins anew.
  }
}

/** Sends up what the maker wants to look at. */
export function tellShown<S extends Shown>(from: HTMLElement, detail: Partial<S>): void {
  from.dispatchEvent(new CustomEvent('task-told', { detail, bubbles: true, composed: true }));
}
