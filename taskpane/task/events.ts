import type { TableKind } from '../../src/workbook/schema.ts';
import type { TaskDraft } from './task-kind.ts';

/** News that a task's step sends up to the pane; properties go down. */
export interface TaskEvents<D extends TaskDraft> {
  /** Something was told of the draft. */
  readonly 'task-told': Partial<D>;
  readonly 'task-step': D['step'];
  /** Write the previewed lines. */
  readonly 'task-record': undefined;
  /** Take back what stands under this id. */
  readonly 'task-undo': string;
  readonly 'task-another': undefined;
  readonly 'task-check-again': undefined;
}

/** Sends one piece of news up through every shadow root. */
export type Tell<D extends TaskDraft> = <K extends keyof TaskEvents<D>>(
  from: HTMLElement,
  name: K,
  detail: TaskEvents<D>[K],
) => void;

/** The way to tell news of drafts of one kind. */
export function telling<D extends TaskDraft>(): Tell<D> {
  return (from, name, detail) => {
    from.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  };
}

/** For parts that serve every task. */
export const tellAny: Tell<TaskDraft> = telling<TaskDraft>();

/** Asks the pane to show another task. */
export function showTask(from: HTMLElement, name: string): void {
  from.dispatchEvent(new CustomEvent('task-show', { detail: name, bubbles: true, composed: true }));
}

/** A cell of one of our tables; without a row, where typing goes on. */
export interface WantedPlace {
  readonly kind: TableKind;
  readonly row?: number;
  readonly header?: string;
}

/** Asks the pane to bring a cell of the sheet before the maker's eyes. */
export function askForPlace(from: HTMLElement, detail: WantedPlace): void {
  from.dispatchEvent(new CustomEvent('place-show', { detail, bubbles: true, composed: true }));
}
