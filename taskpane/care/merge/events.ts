import { telling } from '../../task/events.ts';
import type { MergeDraft } from './draft.ts';

/** Sends news of bringing a copy in. */
export const tell = telling<MergeDraft>();
