import { isRecord } from '../../src/domain/kernel/is-record.ts';
import { holdsTexts, isRecording, isTyped, keepAs, restoreAs } from '../task/kept.ts';
import type { TaskDraft } from '../task/task-kind.ts';
import type { Typed } from '../task/typed.ts';
import { telling } from '../task/events.ts';

/** The pages of a count, in order. */
export const countSteps = ['enter', 'preview', 'done'] as const;
export type CountStep = (typeof countSteps)[number];

/** A count of the shelf as far as it has come; read afresh against the workbook each time. */
export interface CountDraft extends TaskDraft {
  /** Made once when the form opens and kept through retries and reloads. */
  readonly id: string;
  readonly step: CountStep;
  /** The kind of item shown, or "" for all. */
  readonly kind: string;
  /** By item name, exactly as typed; blank is not counted. */
  readonly counts: Typed;
  /** Items found on the shelf that the ledger has never had. */
  readonly also: readonly string[];
}

/** A count that nothing has been said of yet. */
export function newCountDraft(id: string): CountDraft {
  return { id, step: 'enter', kind: '', counts: {}, also: [], recording: undefined };
}

/** Text to keep, which `restoreCountDraft` reads. */
export const keepCountDraft = (draft: CountDraft): string => keepAs(FORM, draft);

/** A kept draft, or undefined where the text is none. */
export const restoreCountDraft = (text: string | undefined): CountDraft | undefined =>
  restoreAs(FORM, text, isCountDraft);

/** Changes when a kept draft can't be read as before. */
const FORM = 1;

function isCountDraft(value: unknown): value is CountDraft {
  if (!isRecord(value)) return false;
  const also = value['also'];
  return (
    holdsTexts(value, ['id', 'kind']) &&
    countSteps.some((step) => step === value['step']) &&
    isTyped(value['counts']) &&
    isRecording(value['recording']) &&
    Array.isArray(also) &&
    also.every((name) => typeof name === 'string')
  );
}

/** Sends news of a count. */
export const tell = telling<CountDraft>();
