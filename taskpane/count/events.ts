import { telling } from '../task/events.ts';
import type { CountDraft } from './draft.ts';

/** Sends news of a count. */
export const tell = telling<CountDraft>();
