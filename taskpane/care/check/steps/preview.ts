import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { HealthFinding } from '../../../../src/domain/health/finding.ts';
import { asRead } from '../../../as-read.ts';
import { batchTable, moveTable } from '../../../parts/ledger-tables.ts';
import { PreviewFrame, type PreviewWords } from '../../../parts/preview-frame.ts';

/** Second step of the check: the lines that mend one finding, before they are written. */
export class CheckPreviewStep extends PreviewFrame<HealthFinding> {
  static override properties: PropertyDeclarations = { currency: { attribute: false } };

  declare currency: string;

  protected override words(): PreviewWords {
    return {
      heading: 'Lines to add',
      record: 'Add these lines',
      id: 'this repair',
      back: 'enter',
    };
  }

  protected override canRecord({ repair }: HealthFinding): boolean {
    return repair !== undefined;
  }

  protected override lines({ says, repair }: HealthFinding): TemplateResult {
    const { moves = [], batches = [] } = repair ?? {};
    return html`<p>${asRead(says)}</p>
      <p><strong>${asRead(repair?.says ?? '')}</strong></p>
      ${moves.length === 0 ? nothing : moveTable(moves, this.currency)}
      ${batches.length === 0 ? nothing : batchTable(batches)}
      <p class="small quiet">Nothing that stands in the workbook is changed.</p>`;
  }
}
customElements.define('pour-check-preview', CheckPreviewStep);
