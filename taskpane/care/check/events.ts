import { telling } from '../../task/events.ts';
import type { CheckDraft } from './draft.ts';

/** Sends news of mending. */
export const tell = telling<CheckDraft>();
