import type { Draft, Step } from './draft.ts';

/** News that a step sends up to the pane; properties go down. */
export interface PaneEvents {
  /** Something was told of the pour. */
  readonly 'pour-told': Partial<Draft>;
  readonly 'pour-step': Step;
  /** Write the previewed lines. */
  readonly 'pour-record': undefined;
  /** Take back the batch of this id. */
  readonly 'pour-undo': string;
  readonly 'pour-another': undefined;
  readonly 'pour-check-again': undefined;
}

/** Sends one piece of news up through every shadow root. */
export function tell<K extends keyof PaneEvents>(
  from: HTMLElement,
  name: K,
  detail: PaneEvents[K],
): void {
  from.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
}
