import { telling } from '../task/events.ts';
import type { SellDraft } from './draft.ts';

/** Sends news of a selling day. */
export const tell = telling<SellDraft>();
