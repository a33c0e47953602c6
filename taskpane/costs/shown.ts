import type { HostMemory } from '../../src/workbook/port.ts';
import { holdsTexts, isRecord, keepAs, restoreAs } from '../task/kept.ts';

/** What the maker looks at. */
export interface CostsShown {
  /** Name of a design, or "" for the first. */
  readonly design: string;
  /** Name of a fair, or "" for the next. */
  readonly fair: string;
}

const KEY = 'costs shown';
const FORM = 1;

/** What was looked at last. */
export function shownLast(memory: HostMemory): CostsShown {
  return restoreAs(FORM, memory.get(KEY), isShown) ?? { design: '', fair: '' };
}

/** Keeps what is looked at through reloads; without room for it the pane begins anew. */
export function keepShown(memory: HostMemory, shown: CostsShown): void {
  try {
    memory.set(KEY, keepAs(FORM, shown));
  } catch {
    // It is only a choice of what to look at.
  }
}

const isShown = (value: unknown): value is CostsShown =>
  isRecord(value) && holdsTexts(value, ['design', 'fair']);
