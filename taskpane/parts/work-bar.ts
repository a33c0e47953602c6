import '@fluentui/web-components/button.js';
import { html, nothing, type TemplateResult } from 'lit';
import type { Progress } from '../task/long-work.ts';
import { liveNotice, type Notice } from './notice.ts';

/**
 * A place that tells how far long work is, and lets the maker stop it; without any it tells the notice.
 * It stands there before, so that what it says is read out.
 */
export function workBar(
  progress: Progress | undefined,
  notice: Notice | undefined,
  onStop: () => void,
): TemplateResult {
  return html`${liveNotice(progress === undefined ? notice : { kind: 'plain', text: progress.step })}
  ${
    progress === undefined
      ? nothing
      : html`<progress
            max="1"
            value=${progress.share ?? nothing}
            aria-label="How much is done"
          ></progress>
          <div class="actions">
            <fluent-button id="stop" @click=${onStop}>Stop</fluent-button>
          </div>`
  }`;
}
