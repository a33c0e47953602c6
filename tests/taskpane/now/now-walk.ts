import type { TaskWalk } from '../task-walk.ts';
import { plannedWorkshop } from './planned-workshop.ts';

/** Advice: a fair without its sales, a plan that does not fit; and what the plan leaves open. */
export const nowWalk: TaskWalk = {
  name: 'now',
  tables: plannedWorkshop,
  pages: [
    ['what now', (page) => page.locator('pour-now .card').first().waitFor()],
    ['what the plan leaves open', (page) => page.locator('pour-now summary').click()],
  ],
};
