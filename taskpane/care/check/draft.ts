import { isRecord } from '../../../src/domain/kernel/is-record.ts';
import { holdsTexts, isRecording, keepAs, restoreAs } from '../../task/kept.ts';
import type { ShortDraft } from '../../task/task.ts';
import { telling } from '../../task/events.ts';

/** Which finding of the health check is being mended. */
export interface CheckDraft extends ShortDraft {
  /** What tells the finding from all others; "" while none is chosen. */
  readonly finding: string;
}

/** A check of which nothing is being mended. */
export const newCheckDraft = (): CheckDraft => ({
  step: 'enter',
  finding: '',
  recording: undefined,
});

/** Text to keep, which `restoreCheckDraft` reads. */
export const keepCheckDraft = (draft: CheckDraft): string => keepAs(FORM, draft);

/** A kept draft, or undefined where the text is none. */
export const restoreCheckDraft = (text: string | undefined): CheckDraft | undefined =>
  restoreAs(FORM, text, isCheckDraft);

/** Changes when a kept draft can't be read as before. */
const FORM = 2;

const isCheckDraft = (value: unknown): value is CheckDraft =>
  isRecord(value) &&
  holdsTexts(value, ['step', 'finding']) &&
  ['enter', 'preview', 'done'].includes(String(value['step'])) &&
  isRecording(value['recording']);

/** Sends news of mending. */
export const tell = telling<CheckDraft>();
