import { css, html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { isBlank } from '../src/workbook/column.ts';
import { findTables } from '../src/workbook/find-tables.ts';
import type { Change, HostPort } from '../src/workbook/port.ts';
import { repeatsOf } from '../src/workbook/sharing/repeats.ts';
import './findings.ts';
import { looks } from './looks.ts';
import { stepBarLooks } from './parts/step-bar.ts';
import { taskTabLooks, taskTabs } from './parts/task-tabs.ts';
import { keptAnswer } from './task/kept-answer.ts';
import { Session, type Written } from './task/session.ts';
import type { WantedPlace } from './task/events.ts';
import type { Task } from './task/task.ts';
import { makeTasks } from './tasks.ts';
import { type PaneTheme, prefersDark, showTheme } from './theme.ts';

/** Where the host keeps which task was shown last. */
const SHOWN = 'task shown';

const news = [
  'task-told',
  'task-step',
  'task-record',
  'task-undo',
  'task-another',
  'task-check-again',
] as const;

/** Kept, since it looks at every id of the ledger. */
const repeatsIn = keptAnswer(repeatsOf);

/** The whole pane: its tasks, one shown at a time, in whatever host its `port` reaches. */
export class PourPane extends LitElement {
  static override styles = [
    looks,
    stepBarLooks,
    taskTabLooks,
    css`
      :host {
        min-height: 100%;
        background: var(--colorNeutralBackground1);
      }
      section {
        max-width: 560px;
        margin: 0 auto;
        padding: 12px 16px 24px;
      }
    `,
  ];
  static override properties = { port: { attribute: false }, theme: {} };

  /** The workbook. Set it once the host is ready; until then the pane waits. */
  declare port: HostPort | undefined;
  /** Light or dark as the host looks; where not set, as the person prefers. */
  declare theme: PaneTheme | undefined;
  private session: Session | undefined;
  private tasks: readonly Task[] = [];
  private task: Task | undefined;
  private readonly preference = prefersDark();
  private page = '';

  constructor() {
    super();
    for (const name of news) {
      this.addEventListener(name, (event) => {
        this.task?.hear(event);
      });
    }
    this.addEventListener('place-show', (event) => {
      this.showPlace((event as CustomEvent<WantedPlace>).detail);
    });
    this.addEventListener('task-show', (event) => {
      this.show((event as CustomEvent<string>).detail);
      void this.updateComplete.then(() => this.focusHeading());
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.preference.addEventListener('change', this.look);
    this.look();
    this.open();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.close();
    this.preference.removeEventListener('change', this.look);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('theme')) this.look();
    if (changed.has('port')) this.open();
  }

  private open(): void {
    this.close();
    const { port } = this;
    if (port === undefined) return;
    this.session = new Session(port);
    this.session.onState(this.changed);
    this.tasks = makeTasks(port, this.session, this.changed);
    const shown = port.memory.get(SHOWN);
    this.task = this.tasks.find(({ name }) => name === shown) ?? this.tasks[0];
    void this.session.read();
  }

  private close(): void {
    for (const task of this.tasks) task.stop();
    this.session?.stop();
    this.tasks = [];
    this.session = undefined;
  }

  private readonly changed = (): void => {
    this.requestUpdate();
  };

  protected override updated(): void {
    const page = this.currentPage();
    const before = this.page;
    this.page = page;
    if (before === page) return;
    // The first page to show leaves the focus where it is; a tab keeps its own.
    const isOfSameTask = taskOf(before) === taskOf(page);
    if (before !== '' && before !== 'reading' && isOfSameTask && !this.isMakerElsewhere) {
      void this.focusHeading();
    }
  }

  override render(): TemplateResult {
    const { task } = this;
    return html`${
        this.tasks.length === 0
          ? ''
          : taskTabs(this.tasks, task?.name ?? '', (name) => {
              this.show(name);
            })
      }
      <section id="page" role="tabpanel" aria-label=${task?.title ?? 'Pour Ledger'}>
        ${this.content()}
      </section>`;
  }

  /** Shows a task; each keeps its own draft meanwhile. */
  private show(name: string): void {
    const task = this.tasks.find((known) => known.name === name || known.shows?.(name) === true);
    if (task === undefined || task === this.task) return;
    this.task = task;
    task.reopen?.();
    try {
      this.port?.memory.set(SHOWN, name);
    } catch {
      // No room: the pane then opens at its first task.
    }
    this.requestUpdate();
  }

  /** Brings a cell before the maker's eyes; without a row, the first blank one of its table. */
  private showPlace({ kind, row, header }: WantedPlace): void {
    const state = this.session?.state;
    if (state === undefined || !('tables' in state)) return;
    const table = findTables(state.tables).get(kind);
    if (table === undefined) return;
    const blank = table.rows.findIndex((cells) => cells.every(isBlank));
    const first = 1 + (blank < 0 ? table.rows.length : blank);
    const place = {
      table: table.name,
      row: row ?? first,
      ...(header === undefined ? {} : { header }),
    };
    // Where the host can't, the sentence still says which cell.
    this.port?.show(place).catch(() => undefined);
  }

  /** The task's name, of a tab within it too, and last its page. */
  private currentPage(): string {
    const state = this.session?.state;
    if (this.task === undefined || state === undefined || state.kind === 'reading')
      return 'reading';
    const page = state.kind === 'ready' ? this.task.page(state) : 'findings';
    return `${this.task.name} ${page}`;
  }

  private content(): TemplateResult {
    const state = this.session?.state;
    if (this.task === undefined || state === undefined || state.kind === 'reading') {
      return html`<p role="status" class="quiet">Reading the workbook…</p>`;
    }
    if (state.kind !== 'ready') {
      return html`<pour-findings
        .findings=${state.kind === 'failed' ? [{ sentence: state.sentence }] : state.findings}
        .isUnreachable=${state.kind === 'failed'}
        .repeats=${state.kind === 'failed' ? [] : repeatsIn(state.tables)}
        .write=${this.tellApart}
      ></pour-findings>`;
    }
    return this.task.content(state);
  }

  /** Tells lines apart, then shows the check, which finds what was written twice. */
  private readonly tellApart = async (change: Change): Promise<Written> => {
    const { session } = this;
    if (session === undefined) return { kind: 'refused', sentence: 'The workbook was closed.' };
    const written = await session.alone(() => session.write(change));
    if (written.kind === 'applied') this.show('check');
    return written;
  };

  /** Whether the keys go elsewhere, to a cell that is being typed in: then they stay there. */
  private get isMakerElsewhere(): boolean {
    const { activeElement, body } = document;
    const isHere = activeElement === null || activeElement === body || this.contains(activeElement);
    return !document.hasFocus() || !isHere;
  }

  private readonly look = (): void => {
    showTheme(this, this.theme ?? (this.preference.matches ? 'dark' : 'light'));
  };

  private async focusHeading(): Promise<void> {
    const step = this.renderRoot.querySelector<LitElement>('section > :last-child');
    await step?.updateComplete;
    step?.renderRoot.querySelector<HTMLElement>('h2')?.focus();
    // The new step from its beginning, wherever the last one was scrolled to.
    this.scrollIntoView({ block: 'start' });
  }
}

const taskOf = (page: string): string => page.slice(0, page.lastIndexOf(' '));
