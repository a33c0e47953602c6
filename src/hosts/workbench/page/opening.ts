import { nextTask } from '../../../../taskpane/task/long-work.ts';
import { element, show } from './elements.ts';

/** The workbook's way onto the page: shows how far it is, and lets the maker stop it. */
export interface Opening {
  /** Aborted, with a `Stopped`, as soon as the maker stops the opening. */
  readonly signal: AbortSignal;
  /** Shows a step and the share of it that is done, 0 to 1; undefined where nobody knows. */
  show(step: string, share?: number): void;
  /** Shows it, then lets the page draw and answer. Throws `Stopped` when the maker has had enough. */
  pause(step: string, share?: number): Promise<void>;
  /** The workbook is open. */
  finish(): void;
}

/** The maker stopped the opening. */
export class Stopped extends Error {
  constructor() {
    super('Opening was stopped. The file is as it was.');
    this.name = 'Stopped';
  }
}

/** Starts showing; the cells stay out of reach until `finish`. */
export function createOpening(): Opening {
  const controller = new AbortController();
  const bar = element('opening-share') as HTMLProgressElement;
  const button = element('opening-stop') as HTMLButtonElement;
  const release = holdHands(element('grid'));
  button.addEventListener('click', () => {
    if (controller.signal.aborted) location.reload();
    else controller.abort(new Stopped());
  });
  controller.signal.addEventListener('abort', () => {
    show('opening-step', (controller.signal.reason as Stopped).message);
    bar.hidden = true;
    button.textContent = 'Open it';
  });
  const showStep = (step: string, share?: number) => {
    if (controller.signal.aborted) return;
    show('opening-step', step);
    if (share === undefined) bar.removeAttribute('value');
    else bar.value = share;
  };
  return {
    signal: controller.signal,
    show: showStep,
    async pause(step, share) {
      showStep(step, share);
      await nextTask();
      controller.signal.throwIfAborted();
    },
    finish() {
      element('opening').hidden = true;
      release();
    },
  };
}

const HANDS = ['keydown', 'beforeinput', 'paste', 'cut', 'drop', 'pointerdown', 'dblclick'];

/**
 * Keeps keys and clicks from the cells until the returned function is called; Tab still leads out.
 * An inert grid would do the same, but it never takes to the keyboard again.
 */
function holdHands(grid: HTMLElement): () => void {
  const held = new AbortController();
  const hold = (event: Event) => {
    if (!(event.target instanceof Node) || !grid.contains(event.target)) return;
    event.stopImmediatePropagation();
    if (!(event instanceof KeyboardEvent && event.key === 'Tab')) event.preventDefault();
  };
  for (const kind of HANDS) {
    window.addEventListener(kind, hold, { capture: true, signal: held.signal });
  }
  return () => {
    held.abort();
  };
}
