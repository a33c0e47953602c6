import type { TableData } from '../../../src/workbook/port.ts';
import type { Side } from '../../../src/workbook/sharing/merge-into.ts';
import { isRecord } from '../../../src/domain/kernel/is-record.ts';
import { holdsTexts, isRecording, keepAs, restoreAs } from '../../task/kept.ts';
import type { ShortDraft } from '../../task/task.ts';
import { telling } from '../../task/events.ts';

/** Another copy as far as it is brought in. */
export interface MergeDraft extends ShortDraft {
  readonly fileName: string;
  /** Its tables. A file is too large to be kept through a reload: then it is chosen again. */
  readonly copy: readonly TableData[] | undefined;
  /** Why the file chosen can't be read, or "". */
  readonly problem: string;
  /** Which version to keep, by the difference's key: nothing that may be chosen is chosen for the maker. */
  readonly chosen: Readonly<Record<string, Side>>;
}

/** Nothing chosen yet. */
export const newMergeDraft = (): MergeDraft => ({
  step: 'enter',
  fileName: '',
  copy: undefined,
  problem: '',
  chosen: {},
  recording: undefined,
});

/** Text to keep, which `restoreMergeDraft` reads; all but the copy itself. */
export const keepMergeDraft = ({ fileName, step, recording }: MergeDraft): string =>
  keepAs(FORM, { fileName, step, recording });

/** A kept draft, or undefined where the text is none. */
export function restoreMergeDraft(text: string | undefined): MergeDraft | undefined {
  const kept = restoreAs(FORM, text, isKept);
  return kept && { ...newMergeDraft(), ...kept };
}

/** Changes when a kept draft can't be read as before. */
const FORM = 1;

const isKept = (value: unknown): value is Pick<MergeDraft, 'fileName' | 'step' | 'recording'> =>
  isRecord(value) &&
  holdsTexts(value, ['fileName', 'step']) &&
  ['enter', 'preview', 'done'].includes(String(value['step'])) &&
  isRecording(value['recording']);

/** Sends news of bringing a copy in. */
export const tell = telling<MergeDraft>();
