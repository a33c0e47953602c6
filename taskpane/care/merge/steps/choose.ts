import { html, LitElement, type TemplateResult } from 'lit';
import type { HostFiles, TableData } from '../../../../src/workbook/port.ts';
import { fieldLooks, looks, noticeLooks } from '../../../looks.ts';
import type { Notice } from '../../../parts/notice.ts';
import { workBar } from '../../../parts/work-bar.ts';
import { type Pause, pausing, type Progress } from '../../../task/long-work.ts';
import { type MergeDraft, tell } from '../draft.ts';

/** The copy that was read, before the draft knows of it. */
type Chosen = Pick<MergeDraft, 'chosen'> & { readonly copy: readonly TableData[] };

const STOPPED: Notice = {
  kind: 'plain',
  text: 'Stopped. Nothing was brought in and nothing was changed.',
};

/** First step of bringing a copy in: its file. */
export class MergeStep extends LitElement {
  static override styles = [looks, fieldLooks, noticeLooks];
  static override properties = {
    draft: { attribute: false },
    files: { attribute: false },
    prepare: { attribute: false },
    notice: { attribute: false },
    progress: { state: true },
    isStopped: { state: true },
  };

  declare draft: MergeDraft;
  declare files: HostFiles;
  /** Works out in pieces what the copy brings in. */
  declare prepare: (copy: Chosen, pause: Pause) => Promise<void>;
  declare notice: Notice | undefined;
  declare progress: Progress | undefined;
  declare isStopped: boolean;
  private stopper = new AbortController();

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stopper.abort();
  }

  override render(): TemplateResult {
    const { problem } = this.draft;
    return html`<div class="stack">
      <div>
        <h2 tabindex="-1">Bring in another copy</h2>
        <p class="quiet">
          Two of you wrote in two copies of this workbook? Choose the other one. Its lines are added
          to this workbook; the file itself is only read.
        </p>
      </div>
      <div class="field">
        <label for="copy">The other copy (.xlsx)</label>
        <input
          id="copy"
          type="file"
          accept=".xlsx"
          ?disabled=${this.progress !== undefined}
          aria-invalid=${problem === '' ? 'false' : 'true'}
          aria-describedby="copy-problem"
          @change=${(event: Event) => {
            void this.read((event.target as HTMLInputElement).files?.[0]);
          }}
        />
        <p id="copy-problem" class="error" role="status">
          ${this.progress === undefined ? problem : ''}
        </p>
      </div>
      ${workBar(this.progress, this.isStopped ? STOPPED : this.notice, () => {
        void this.stop();
      })}
      <p class="small quiet">
        Save a copy of this workbook first if you want to be able to go back.
      </p>
    </div>`;
  }

  private async read(file: File | undefined): Promise<void> {
    if (file === undefined) return;
    this.stopper = new AbortController();
    const { signal } = this.stopper;
    this.isStopped = false;
    const pause = pausing(signal, (progress) => {
      this.progress = progress;
    });
    try {
      await this.bringUp(file, signal, pause);
    } catch (thrown) {
      // What was stopped has told nobody anything.
      if (!signal.aborted) throw thrown;
    } finally {
      this.progress = undefined;
    }
  }

  private async bringUp(file: File, signal: AbortSignal, pause: Pause): Promise<void> {
    await pause('Reading the file…');
    const read = await this.tablesOf(file, signal);
    const told = { fileName: file.name, chosen: {} };
    if (read.kind === 'read') {
      await this.prepare({ copy: read.tables, chosen: told.chosen }, pause);
      tell(this, 'task-told', { ...told, copy: read.tables, problem: '', step: 'preview' });
    } else {
      tell(this, 'task-told', { ...told, copy: undefined, problem: read.sentence });
    }
  }

  private async tablesOf(file: File, signal: AbortSignal) {
    try {
      return await this.files.readTables(new Uint8Array(await file.arrayBuffer()), signal);
    } catch {
      signal.throwIfAborted();
      const sentence = 'The file could not be read. Is it still there, and open to you?';
      return { kind: 'refused', sentence } as const;
    }
  }

  private async stop(): Promise<void> {
    this.stopper.abort();
    this.progress = undefined;
    this.isStopped = true;
    await this.updateComplete;
    const input = this.renderRoot.querySelector<HTMLInputElement>('#copy');
    if (input === null) return;
    // So that the same file can be chosen again.
    input.value = '';
    input.focus();
  }
}
customElements.define('pour-merge', MergeStep);
