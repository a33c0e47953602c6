import type { Book } from '../../src/domain/book/book.ts';
import type { Day } from '../../src/domain/kernel/day.ts';
import type { Result } from '../../src/domain/kernel/result.ts';
import type { Change, HostPort } from '../../src/workbook/port.ts';
import type { Ready } from './session.ts';

/** What every task's draft has; all else in it is the task's own, exactly as typed. */
export interface TaskDraft {
  readonly step: string;
  /** What was being written when recording began, until it is known how that ended. */
  readonly recording: Change | undefined;
}

/** What the flow itself tells a draft. */
export interface Settled {
  readonly step?: 'done';
  readonly recording?: Change | undefined;
}

/** What a draft is told: some of it anew, its step alone, or how recording ended. */
export type Told<D extends TaskDraft> = Partial<D> | { readonly step: D['step'] } | Settled;

/** Who records, and when. */
export interface Who {
  readonly today: Day;
  readonly by: string;
}

/** One of the pane's tasks: its draft, what it writes and its words. The flow does the rest. */
export interface TaskKind<D extends TaskDraft> {
  /** Where the host keeps the draft. */
  readonly key: string;
  /** A draft that nothing has been told of yet, with an id of its own. */
  readonly fresh: (port: HostPort) => D;
  readonly keep: (draft: D) => string;
  readonly restore: (text: string | undefined) => D | undefined;
  /** The draft with some of it told anew. */
  readonly change: (draft: D, told: Told<D>) => D;
  /** What recording writes; fails while anything is missing or unclear. */
  readonly changeToRecord: (state: Ready, draft: D, who: Who) => Result<Change>;
  /** How what stands under an id is taken back; undefined where nothing can be. */
  readonly undo:
    | {
        readonly change: (state: Ready, id: string, who: Who) => Result<Change>;
        readonly done: (id: string) => string;
        /** Whether what the draft recorded was taken back since: opened again, its last page says nothing of use. */
        readonly isUndone: (book: Book, draft: D) => boolean;
      }
    | undefined;
  /** Whether the draft's lines stand in the workbook, by whoever's hand. */
  readonly isInBook: (book: Book, draft: D) => boolean;
  readonly words: {
    readonly written: string;
    /** The draft's lines were found in the workbook. */
    readonly standing: string;
    /** The host has no room to keep the draft. */
    readonly notKept: string;
  };
}
