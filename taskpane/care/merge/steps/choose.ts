import { html, LitElement, type TemplateResult } from 'lit';
import type { HostFiles } from '../../../../src/workbook/port.ts';
import { fieldLooks, looks, noticeLooks } from '../../../looks.ts';
import { liveNotice, type Notice } from '../../../parts/notice.ts';
import type { MergeDraft } from '../draft.ts';
import { tell } from '../events.ts';

/** First step of bringing a copy in: its file. */
export class MergeStep extends LitElement {
  static override styles = [looks, fieldLooks, noticeLooks];
  static override properties = {
    draft: { attribute: false },
    files: { attribute: false },
    notice: { attribute: false },
    isReading: { state: true },
  };

  declare draft: MergeDraft;
  declare files: HostFiles;
  declare notice: Notice | undefined;
  declare isReading: boolean;

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
          aria-invalid=${problem === '' ? 'false' : 'true'}
          aria-describedby="copy-problem"
          @change=${(event: Event) => {
            void this.read((event.target as HTMLInputElement).files?.[0]);
          }}
        />
        <p id="copy-problem" class="error" role="status">${this.isReading ? '' : problem}</p>
      </div>
      ${liveNotice(this.isReading ? { kind: 'plain', text: 'Reading the file…' } : this.notice)}
      <p class="small quiet">
        Save a copy of this workbook first if you want to be able to go back.
      </p>
    </div>`;
  }

  private async read(file: File | undefined): Promise<void> {
    if (file === undefined) return;
    this.isReading = true;
    const read = await this.tablesOf(file);
    this.isReading = false;
    const told = { fileName: file.name, chosen: {} };
    if (read.kind === 'read') {
      tell(this, 'task-told', { ...told, copy: read.tables, problem: '', step: 'preview' });
    } else {
      tell(this, 'task-told', { ...told, copy: undefined, problem: read.sentence });
    }
  }

  private async tablesOf(file: File) {
    try {
      return await this.files.readTables(new Uint8Array(await file.arrayBuffer()));
    } catch {
      const sentence = 'The file could not be read. Is it still there, and open to you?';
      return { kind: 'refused', sentence } as const;
    }
  }
}
customElements.define('pour-merge', MergeStep);
