import { marketWorkshop } from '../market-workshop.ts';
import type { TaskWalk } from '../task-walk.ts';

/** Advice: a fair without its sales. */
export const nowWalk: TaskWalk = {
  name: 'now',
  tables: marketWorkshop,
  pages: [['what now', (page) => page.locator('pour-now .card').waitFor()]],
};
