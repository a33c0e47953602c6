import { html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Result } from '../../src/domain/kernel/result.ts';
import { cardLooks, fieldLooks, looks, noticeLooks } from '../looks.ts';
import { tellAny } from '../task/events.ts';
import { busyNews, liveNotice, type Notice, noticeBar } from './notice.ts';
import { halfWrittenNotice, recordActions } from './record-actions.ts';

/** What a task's preview says, and what it is of. */
export interface PreviewWords {
  readonly heading: string;
  /** On the button that records. */
  readonly record: string;
  /** Id of what would be written. */
  readonly id: string;
  /** The step before. */
  readonly back: string;
}

/**
 * The frame of a task's preview: what will be written or what stands in the way, news, the ways on.
 * What an earlier try wrote in part can only be finished. A task fills in its words and its lines.
 */
export abstract class PreviewFrame<P> extends LitElement {
  static override styles = [looks, fieldLooks, cardLooks, noticeLooks];
  static override properties: PropertyDeclarations = {
    posting: { attribute: false },
    notice: { attribute: false },
    isBusy: { attribute: false },
    isHalfWritten: { attribute: false },
  };

  declare posting: Result<P>;
  declare notice: Notice | undefined;
  declare isBusy: boolean;
  /** An earlier try wrote some of the lines. */
  declare isHalfWritten: boolean;

  protected abstract words(): PreviewWords;

  /** All that would be written. */
  protected abstract lines(posting: P): TemplateResult;

  /** Whether there is anything to write; a task whose posting may be empty says when. */
  protected canRecord?(posting: P): boolean;

  override render(): TemplateResult {
    const { posting, isBusy, isHalfWritten } = this;
    const { heading, record, id, back } = this.words();
    return html`<div class="stack">
      <h2 tabindex="-1">${heading}</h2>
      ${isHalfWritten ? halfWrittenNotice(id) : this.body()} ${liveNotice(this.notice)}
      ${busyNews(isBusy)}
      ${recordActions({
        label: record,
        canRecord: posting.ok && (this.canRecord?.(posting.value) ?? true),
        isBusy,
        isHalfWritten,
        onRecord: () => {
          tellAny(this, 'task-record', undefined);
        },
        onBack: () => {
          tellAny(this, 'task-step', back);
        },
      })}
    </div>`;
  }

  private body(): TemplateResult {
    const { posting } = this;
    if (posting.ok) return this.lines(posting.value);
    return html`${noticeBar({ kind: 'bad', text: posting.failure.sentence })}`;
  }
}
