import { html } from 'lit';
import type { TableNames } from '../../../src/workbook/find-tables.ts';
import type { HostFiles } from '../../../src/workbook/port.ts';
import { type PartnerCopy, partnerCopy } from '../../../src/workbook/sharing/partner-copy.ts';
import type { Notice } from '../../parts/notice.ts';
import { keptAnswer } from '../../task/kept-answer.ts';
import type { Look } from '../../task/look-task.ts';
import type { Session } from '../../task/session.ts';
import './partner-page.ts';

interface PartnerShown extends Readonly<Record<string, string>> {
  readonly costs: string;
}

/** A copy for a partner: the workbook itself is not written to. */
export const partnerLook = (files: HostFiles, session: Session): Look<PartnerShown> => ({
  name: 'partner',
  label: 'Share',
  title: 'A copy for a partner',
  start: { costs: 'without' },
  content: (book, today, { costs }) => {
    const names = session.state.kind === 'ready' ? session.state.names : NO_NAMES;
    return html`<pour-partner
      .copyOf=${(withCosts: boolean) => copyFor(book, names, today, withCosts)}
      .give=${(copy: PartnerCopy, signal: AbortSignal) => give(files, copy, signal)}
      ?withCosts=${costs === 'with'}
    ></pour-partner>`;
  },
});

/** Kept, since it goes through every table. */
const copyFor = keptAnswer(partnerCopy);

const NO_NAMES: TableNames = new Map();

async function give(
  files: HostFiles,
  { workbook }: PartnerCopy,
  signal: AbortSignal,
): Promise<Notice> {
  try {
    const { kind, sentence } = await files.give(workbook, signal);
    return { kind: kind === 'given' ? 'good' : 'bad', text: sentence };
  } catch {
    signal.throwIfAborted();
    return { kind: 'bad', text: 'The copy could not be made. Reload the pane and try again.' };
  }
}
