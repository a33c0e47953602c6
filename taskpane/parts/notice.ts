import { html, nothing, type TemplateResult } from 'lit';
import { asRead } from '../as-read.ts';

/** Something to tell the maker: its kind and the sentence. */
export interface Notice {
  readonly kind: 'plain' | 'good' | 'warn' | 'bad';
  readonly text: string;
}

/** A note with a bar of colour; nothing where there is nothing to say. */
export function noticeBar(
  notice: Notice | undefined,
  more: TemplateResult | typeof nothing = nothing,
): TemplateResult | typeof nothing {
  if (notice === undefined) return nothing;
  return html`<div class="notice ${notice.kind}">
    <p>${asRead(notice.text)}</p>
    ${more}
  </div>`;
}

/** A place where news appears and is read out; it stands there empty before. */
export function liveNotice(notice: Notice | undefined): TemplateResult {
  return html`<div role="status">${noticeBar(notice)}</div>`;
}

/** Tells whoever hears the page that something is being written; the button that says so is not read anew. */
export function busyNews(isBusy: boolean): TemplateResult {
  return html`<p class="unseen" role="status">${isBusy ? 'Writing to the workbook…' : ''}</p>`;
}
