import { telling } from '../task/events.ts';
import type { Draft } from './draft.ts';

/** Sends news of a pour. */
export const tell = telling<Draft>();
