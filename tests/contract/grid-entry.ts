import { createBookPort } from '../../src/hosts/workbench/page/book-port.ts';
import { tellTables } from '../../src/hosts/workbench/page/engine-tables.ts';
import { createGrid } from '../../src/hosts/workbench/page/grid.ts';
import { mountGrid } from '../../src/hosts/workbench/page/grid-host.ts';
import { createLiveTables } from '../../src/hosts/workbench/page/live-tables.ts';
import { snapshotOf } from '../../src/hosts/workbench/page/snapshot.ts';
import { memoryOf } from '../support/memory-port.ts';
import { imageOf, takesEverySave } from './case-image.ts';
import { twice, type WriteTwice } from './write-twice.ts';

declare global {
  interface Window {
    writeInGrid: WriteTwice;
  }
}

/** The workbench's own port over its own grid, mounted for this change alone. */
window.writeInGrid = async (tables, formulas, change) => {
  const image = imageOf(tables, formulas);
  const host = mountGrid('grid', await snapshotOf(image, { pause: () => Promise.resolve() }));
  const sheets = createGrid(host.injector);
  const live = createLiveTables(sheets, image);
  tellTables(host.injector, live)();
  const port = createBookPort({
    sheets,
    tables: live,
    saver: takesEverySave,
    select: () => Promise.resolve(),
    memory: memoryOf(new Map()),
    brokenNames: [],
  });
  const made = await twice(port, change);
  host.close();
  return made;
};
