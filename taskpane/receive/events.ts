import { telling } from '../task/events.ts';
import type { ReceiveDraft } from './draft.ts';

/** Sends news of a delivery. */
export const tell = telling<ReceiveDraft>();
