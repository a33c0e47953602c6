import { openWorkbench } from './open-workbench.ts';
import { createServerHome } from './server-home.ts';

await openWorkbench(
  createServerHome,
  () => import(/* webpackChunkName: "pane" */ './beside-grid.ts'),
);
