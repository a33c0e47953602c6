import { html } from 'lit';
import { taskTabs } from '../parts/task-tabs.ts';
import type { Task } from '../task/task.ts';

/** One tab of the pane over tasks of its own, one of them shown at a time. */
export function taskGroup(
  look: Pick<Task, 'name' | 'label' | 'title'>,
  tasks: readonly [Task, ...Task[]],
  onChange: () => void,
): Task {
  let [shown] = tasks;
  const show = (name: string): void => {
    shown = tasks.find((task) => task.name === name) ?? shown;
    onChange();
  };
  return {
    ...look,
    page: (state) => `${shown.name} ${shown.page(state)}`,
    content: (state) =>
      html`<div class="within">${taskTabs(tasks, shown.name, show, look.title)}</div>
        ${shown.content(state)}`,
    shows: (name) => {
      const isWithin = tasks.some((task) => task.name === name);
      if (isWithin) show(name);
      return isWithin;
    },
    hear: (event) => {
      shown.hear(event);
    },
    stop: () => {
      for (const task of tasks) task.stop();
    },
  };
}
