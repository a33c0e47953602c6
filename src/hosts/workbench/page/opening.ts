import { nextTask } from '../../../../taskpane/task/long-work.ts';
import { element, show } from './elements.ts';

/** The way of a workbook, or of its sheets, onto the page: shows how far it is, and lets the maker stop it. */
export interface Opening {
  /** Aborted, with a `Stopped`, as soon as the maker stops it. */
  readonly signal: AbortSignal;
  /** Shows a step and the share of it that is done, 0 to 1; undefined where nobody knows. */
  show(step: string, share?: number): void;
  /** Shows it, then lets the page draw and answer. Throws `Stopped` when the maker has had enough. */
  pause(step: string, share?: number): Promise<void>;
  /** It is there. */
  finish(): void;
  /** It can't be there; the sentence says why. It may be tried again. */
  fail(sentence: string): void;
}

/** What an opening says and offers once it has ended without its end. */
export interface Ended {
  readonly stopped: string;
  readonly again: string;
  readonly onAgain: () => void;
}

/** The maker stopped it. */
export class Stopped extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'Stopped';
  }
}

/** Starts showing, one at a time; the cells stay out of reach until `finish`. */
export function createOpening(ended: Ended): Opening {
  const controller = new AbortController();
  const over = new AbortController();
  const bar = element('opening-share') as HTMLProgressElement;
  const button = element('opening-stop') as HTMLButtonElement;
  let isEnded = false;
  holdHands(element('grid'), over.signal);
  const end = (sentence: string) => {
    isEnded = true;
    show('opening-step', sentence);
    bar.hidden = true;
    button.textContent = ended.again;
  };
  const press = () => {
    if (isEnded) {
      over.abort();
      ended.onAgain();
    } else {
      end(ended.stopped);
      controller.abort(new Stopped(ended.stopped));
    }
  };
  button.addEventListener('click', press, { signal: over.signal });
  button.textContent = 'Stop opening';
  bar.hidden = false;
  element('opening').hidden = false;
  const showStep = (step: string, share?: number) => {
    if (isEnded) return;
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
      over.abort();
    },
    fail: end,
  };
}

const HANDS = ['keydown', 'beforeinput', 'paste', 'cut', 'drop', 'pointerdown', 'dblclick'];

/**
 * Keeps keys and clicks from the cells until the signal; Tab still leads out. An inert grid would do the same, but it
 * never takes to the keyboard again.
 */
function holdHands(grid: HTMLElement, until: AbortSignal): void {
  const hold = (event: Event) => {
    if (!(event.target instanceof Node) || !grid.contains(event.target)) return;
    event.stopImmediatePropagation();
    if (!(event instanceof KeyboardEvent && event.key === 'Tab')) event.preventDefault();
  };
  for (const kind of HANDS) window.addEventListener(kind, hold, { capture: true, signal: until });
}
