import type { CostsShown } from './shown.ts';

/** Sends what the maker wants to look at. */
export function tell(from: HTMLElement, name: 'task-told', detail: Partial<CostsShown>): void {
  from.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
}
