import { type Day, readDay } from '../src/domain/kernel/day.ts';
import { nameKey } from '../src/domain/kernel/names.ts';
import type { HostPort } from '../src/workbook/port.ts';
import { changeDraft, type Draft, type Step } from './draft.ts';
import { draftKept, freshDraft, keepInHost } from './draft-keeper.ts';
import type { Notice } from './parts/notice.ts';
import { changeToRecord, changeToUndo, sentenceOfWritten } from './record.ts';
import { type BookState, howMuchStands, Session, type Written } from './session.ts';

const CHANGED: Notice = {
  kind: 'warn',
  text: 'The workbook changed meanwhile. Look it over once more.',
};

/** What is under way. */
export type Busy = 'recording' | 'undoing' | undefined;

/**
 * One host's flow: its workbook, its draft and what the maker does with them. Tells `onChange` after
 * each change of what is to be shown.
 */
export class Flow {
  draft: Draft;
  busy: Busy;
  notice: Notice | undefined;
  private readonly port: HostPort;
  private readonly session: Session;
  private readonly onChange: () => void;

  constructor(port: HostPort, onChange: () => void) {
    this.port = port;
    this.onChange = onChange;
    this.draft = draftKept(port);
    this.session = new Session(port, () => {
      this.settle();
      onChange();
    });
  }

  get state(): BookState {
    return this.session.state;
  }

  get today(): Day {
    return readDay(this.port.today()) ?? 0;
  }

  get by(): string {
    return this.port.userName();
  }

  /** Whether an earlier recording wrote some of its lines and not others. */
  get isHalfWritten(): boolean {
    const { state, draft } = this;
    return (
      this.busy === undefined &&
      state.kind === 'ready' &&
      draft.recording !== undefined &&
      howMuchStands(draft.recording, state.tables) === 'part'
    );
  }

  start(): void {
    void this.session.read();
  }

  stop(): void {
    this.session.stop();
  }

  checkAgain(): Promise<void> {
    return this.session.read();
  }

  tell(told: Partial<Draft>): void {
    // What is being written stays as it was shown.
    if (this.busy === 'recording') return;
    this.keep(changeDraft(this.draft, told));
    this.notice = undefined;
    this.onChange();
  }

  goTo(step: Step): void {
    this.tell({ step });
  }

  another(): void {
    this.keep(freshDraft(this.port));
    this.notice = undefined;
    this.onChange();
  }

  /** Writes the previewed lines. A second call while the first is under way does nothing. */
  async record(): Promise<void> {
    if (this.busy !== undefined) return;
    const shown = this.state;
    const before = this.draft.recording ?? this.changeNow(shown);
    this.begin('recording');
    await this.session.read();
    const change = this.draft.recording ?? this.changeNow(this.state);
    if (change === undefined || JSON.stringify(change) !== JSON.stringify(before)) {
      this.end(this.isInBook ? undefined : CHANGED);
      return;
    }
    this.keep({ ...this.draft, recording: change });
    this.endWith(await this.session.write(change), 'Written to Moves and Batches.');
  }

  /** Takes a batch back. */
  async undo(batch: string): Promise<void> {
    if (this.busy !== undefined) return;
    this.begin('undoing');
    await this.session.read();
    const { state } = this;
    const change =
      state.kind === 'ready' ? changeToUndo(state, batch, this.today, this.by) : undefined;
    if (change === undefined) this.end(undefined);
    else if (!change.ok) this.end({ kind: 'bad', text: change.failure.sentence });
    else {
      const written = await this.session.write(change.value);
      this.endWith(written, `Undone: ${batch}. Stock is what it was before.`);
    }
  }

  private get isInBook(): boolean {
    const { state, draft } = this;
    return state.kind === 'ready' && state.book.batches.has(nameKey(draft.batch));
  }

  private changeNow(state: BookState) {
    if (state.kind !== 'ready') return undefined;
    const change = changeToRecord(state, this.draft, this.today, this.by);
    return change.ok ? change.value : undefined;
  }

  private begin(busy: Busy): void {
    this.busy = busy;
    this.notice = undefined;
    this.onChange();
  }

  private endWith(written: Written, done: string): void {
    if (written.kind === 'refused') this.keep({ ...this.draft, recording: undefined });
    const isThere = written.kind === 'applied' || written.kind === 'already there';
    const text = written.kind === 'applied' ? done : sentenceOfWritten(written);
    this.end({ kind: isThere ? 'good' : 'bad', text });
  }

  private end(notice: Notice | undefined): void {
    this.busy = undefined;
    this.notice = notice;
    this.settle();
    this.onChange();
  }

  /** Brings the draft in step with what the workbook now holds of it. */
  private settle(): void {
    const { state, draft } = this;
    if (state.kind !== 'ready' || this.busy !== undefined || draft.step === 'done') return;
    const stands = draft.recording && howMuchStands(draft.recording, state.tables);
    if (stands === 'all' || (stands === undefined && this.isInBook)) {
      // A write that broke off yet went through ends well, whatever was said meanwhile.
      if (this.notice?.kind !== 'good') {
        this.notice = { kind: 'good', text: 'This pour is in the workbook. It is there once.' };
      }
      this.keep({ ...draft, recording: undefined, step: 'done' });
    } else if (stands === 'none') this.keep({ ...draft, recording: undefined });
  }

  private keep(draft: Draft): void {
    this.draft = draft;
    if (keepInHost(this.port, draft)) return;
    this.notice = { kind: 'warn', text: 'This pour is not kept if the pane is closed: no room.' };
  }
}
