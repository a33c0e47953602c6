import type { TemplateResult } from 'lit';
import type { HostPort } from '../../src/workbook/port.ts';
import type { TaskEvents } from './events.ts';
import { Flow } from './flow.ts';
import type { Ready, Session } from './session.ts';
import type { TaskDraft, TaskKind } from './task-kind.ts';

/** One of the things that can be done in the pane, as its shell sees it. */
export interface Task {
  readonly name: string;
  /** On its tab. */
  readonly label: string;
  /** What is done here, for whoever hears the page. */
  readonly title: string;
  /** Names the page shown: the focus goes to its heading when it changes. */
  readonly page: (state: Ready) => string;
  readonly content: (state: Ready) => TemplateResult;
  /** Shows the task of that name within this one, if there is one. */
  readonly shows?: (name: string) => boolean;
  /** Takes news that a step of it sent up. */
  readonly hear: (event: Event) => void;
  /** It is shown again after another task. */
  readonly reopen?: () => void;
  readonly stop: () => void;
}

/** What one task shows of its flow. */
export interface TaskLook<D extends TaskDraft> extends Pick<Task, 'name' | 'label' | 'title'> {
  readonly page: (flow: Flow<D>, state: Ready) => D['step'];
  readonly content: (flow: Flow<D>, state: Ready, page: D['step']) => TemplateResult;
}

/** The drafts of a short task. */
export interface ShortDraft extends TaskDraft {
  readonly step: 'enter' | 'preview' | 'done';
}

/** The page of a short task: what is being written, or half written, is always looked at. */
export function stepShown<D extends ShortDraft>(flow: Flow<D>): ShortDraft['step'] {
  const { step } = flow.draft;
  if (step === 'done') return 'done';
  return flow.busy === 'recording' || flow.isHalfWritten ? 'preview' : step;
}

/** A task that writes: its kind says what, its look shows it. */
export function taskOf<D extends TaskDraft>(
  kind: TaskKind<D>,
  look: TaskLook<D>,
  port: HostPort,
  session: Session,
  onChange: () => void,
): Task {
  const flow = new Flow(kind, port, session, onChange);
  const heard: { readonly [K in keyof TaskEvents<D>]: (detail: TaskEvents<D>[K]) => unknown } = {
    'task-told': (told) => {
      flow.tell(told);
    },
    'task-step': (step) => {
      flow.goTo(step);
    },
    'task-record': () => flow.record(),
    'task-undo': (id) => flow.undo(id),
    'task-another': () => {
      flow.another();
    },
    'task-check-again': () => session.read(),
  };
  return {
    ...look,
    page: (state) => look.page(flow, state),
    content: (state) => look.content(flow, state, look.page(flow, state)),
    hear: (event) => {
      const name = event.type as keyof TaskEvents<D>;
      void heard[name]((event as CustomEvent<never>).detail);
    },
    reopen: () => {
      flow.reopen();
    },
    stop: () => {
      flow.stop();
    },
  };
}
