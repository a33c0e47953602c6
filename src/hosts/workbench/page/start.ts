import { openWorkbench } from './open-workbench.ts';

await openWorkbench(() => import(/* webpackChunkName: "pane" */ './beside-grid.ts'));
