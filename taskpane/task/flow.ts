import { type Day, readDay } from '../../src/domain/kernel/day.ts';
import type { Change, HostPort } from '../../src/workbook/port.ts';
import { howMuchStands } from '../../src/workbook/write/how-much-stands.ts';
import type { Notice } from '../parts/notice.ts';
import { isOfLedger, keepFor, type LedgerMark, markOf, restoreFor } from './kept-for.ts';
import type { BookState, Ready, Session, Written } from './session.ts';
import type { TaskDraft, TaskKind, Told, Who } from './task-kind.ts';
import { sentenceOfWritten } from './written.ts';

const CHANGED: Notice = {
  kind: 'warn',
  text: 'The workbook changed meanwhile. Look it over once more.',
};

const OTHER_LEDGER: Notice = {
  kind: 'warn',
  text: 'What was begun here belongs to another ledger, so none of it is written to this one.',
};

/** What is under way. */
export type Busy = 'recording' | 'undoing' | undefined;

/**
 * One task's flow: its draft and what the maker does with it. The same for every task: the draft is
 * kept through reloads, the exact change is kept before it is written, and nothing is written twice.
 * Tells `onChange` after each change of what is to be shown.
 */
export class Flow<D extends TaskDraft> {
  draft: D;
  busy: Busy;
  notice: Notice | undefined;
  readonly session: Session;
  private readonly kind: TaskKind<D>;
  private readonly port: HostPort;
  private readonly onChange: () => void;
  private readonly stopListening: () => void;
  /** Shown anew, with a last page from before: of what was undone since, that page goes. */
  private isReopened = true;
  /** The ledger that the draft is of. */
  private ledger: LedgerMark;

  constructor(kind: TaskKind<D>, port: HostPort, session: Session, onChange: () => void) {
    this.kind = kind;
    this.port = port;
    this.session = session;
    this.onChange = onChange;
    const kept = restoreFor(port.memory.get(kind.key));
    this.ledger = kept?.ledger ?? [];
    this.draft = kind.restore(kept?.text) ?? kind.fresh(port);
    this.stopListening = session.onState(() => {
      this.settle();
      onChange();
    });
  }

  get state(): BookState {
    return this.session.state;
  }

  get who(): Who {
    return { today: this.today, by: this.port.userName() };
  }

  get today(): Day {
    return readDay(this.port.today()) ?? 0;
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

  stop(): void {
    this.stopListening();
  }

  tell(told: Told<D>): void {
    // What is being written stays as it was shown.
    if (this.busy === 'recording') return;
    this.notice = undefined;
    this.keep(this.kind.change(this.draft, told));
    this.onChange();
  }

  /** The task is shown again after another, or the pane after it was closed. */
  reopen(): void {
    this.isReopened = true;
    this.settle();
  }

  goTo(step: D['step']): void {
    this.tell({ step });
  }

  another(): void {
    this.notice = undefined;
    this.keep(this.kind.fresh(this.port));
    this.onChange();
  }

  /** Writes the previewed lines. A second call while the first is under way does nothing. */
  async record(): Promise<void> {
    if (this.busy !== undefined) return;
    const before = this.draft.recording ?? this.changeNow();
    this.begin('recording');
    await this.session.alone(async () => {
      await this.session.read();
      const change = this.draft.recording ?? this.changeNow();
      if (change === undefined || JSON.stringify(change) !== JSON.stringify(before)) {
        this.end(this.isInBook ? undefined : CHANGED);
        return;
      }
      this.settleAs({ recording: change });
      this.endWith(await this.session.write(change), this.kind.words.written);
    });
  }

  /** Takes back what stands under an id. */
  async undo(id: string): Promise<void> {
    const { undo } = this.kind;
    if (this.busy !== undefined || undo === undefined) return;
    this.begin('undoing');
    await this.session.alone(async () => {
      await this.session.read();
      const { state } = this;
      const change = state.kind === 'ready' ? undo.change(state, id, this.who) : undefined;
      if (change === undefined) this.end(undefined);
      else if (!change.ok) this.end({ kind: 'bad', text: change.failure.sentence });
      else this.endWith(await this.session.write(change.value), undo.done(id));
    });
  }

  private get isInBook(): boolean {
    const { state } = this;
    return state.kind === 'ready' && this.kind.isInBook(state.book, this.draft);
  }

  private changeNow(): Change | undefined {
    const { state } = this;
    if (state.kind !== 'ready') return undefined;
    const change = this.kind.changeToRecord(state, this.draft, this.who);
    return change.ok ? change.value : undefined;
  }

  private begin(busy: Busy): void {
    this.busy = busy;
    this.notice = undefined;
    this.onChange();
  }

  private endWith(written: Written, done: string): void {
    if (written.kind === 'refused') this.settleAs({ recording: undefined });
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
    const { state } = this;
    if (state.kind !== 'ready' || this.busy !== undefined) return;
    this.leaveOtherLedger(state);
    this.leaveUndone(state);
    const { draft } = this;
    if (draft.step === 'done') return;
    const stands = draft.recording && howMuchStands(draft.recording, state.tables);
    if (stands === 'all' || (stands === undefined && this.isInBook)) {
      // A write that broke off yet went through ends well, whatever was said meanwhile.
      if (this.notice?.kind !== 'good') {
        this.notice = { kind: 'good', text: this.kind.words.standing };
      }
      this.settleAs({ recording: undefined, step: 'done' });
    } else if (stands === 'none') this.settleAs({ recording: undefined });
  }

  /** Begins anew where the workbook is no later state of the one that the draft was begun over. */
  private leaveOtherLedger({ names }: Ready): void {
    const isOurs = isOfLedger(this.ledger, names);
    this.ledger = markOf(names);
    if (isOurs) return;
    if (this.draft.step !== 'done') this.notice = OTHER_LEDGER;
    this.keep(this.kind.fresh(this.port));
  }

  /** Begins anew where what was recorded in an earlier sitting was undone since. */
  private leaveUndone({ book }: Ready): void {
    const { draft, isReopened } = this;
    this.isReopened = false;
    if (!isReopened || draft.step !== 'done' || this.kind.undo?.isUndone(book, draft) !== true)
      return;
    this.notice = undefined;
    this.keep(this.kind.fresh(this.port));
  }

  private settleAs(settled: Told<D>): void {
    this.keep(this.kind.change(this.draft, settled));
  }

  private keep(draft: D): void {
    this.draft = draft;
    try {
      const text = this.kind.keep(draft);
      this.port.memory.set(this.kind.key, keepFor({ ledger: this.ledger, text }));
    } catch {
      // The host has no room, or no right to keep it.
      this.notice = { kind: 'warn', text: this.kind.words.notKept };
    }
  }
}
