import type { Cell } from '../../../../src/workbook/port.ts';
import { FakeRange } from './fake-range.ts';
import { Loaded, type Queue } from './loaded.ts';
import { HostFault } from './workbook-model.ts';

const pathsOf = (paths: string): string[] => paths.split(',').map((path) => path.trim());

/** `workbook.tables`. */
export class FakeTables {
  readonly #context: Queue;
  readonly #loaded = new Loaded();

  constructor(context: Queue) {
    this.#context = context;
  }

  get items(): FakeTable[] {
    return this.#loaded.get('items');
  }

  load(paths: string): this {
    this.#context.queue(() => {
      const items = this.#context.model.tables.map(({ name }) => {
        const table = new FakeTable(this.#context, name);
        for (const path of pathsOf(paths)) table.take(path.replace(/^items\//, ''));
        return table;
      });
      this.#loaded.set('items', items);
    });
    return this;
  }

  getItem(name: string): FakeTable {
    return new FakeTable(this.#context, name);
  }

  readonly onChanged = {
    add: (handler: () => Promise<void>) => {
      const listener = (): void => void handler();
      const { model } = this.#context;
      this.#context.queue(() => model.listeners.add(listener));
      return {
        context: this.#context,
        remove: () => this.#context.queue(() => model.listeners.delete(listener)),
      };
    },
  };
}

class FakeTable {
  readonly #context: Queue;
  readonly #name: string;
  readonly #loaded = new Loaded();

  constructor(context: Queue, name: string) {
    this.#context = context;
    this.#name = name;
  }

  /** Loads one path from the model, while a sync is carried out. */
  take(path: string): void {
    const { model } = this.#context;
    const table = model.table(this.#name);
    const values: Record<string, () => unknown> = {
      name: () => table.name,
      showHeaders: () => table.showHeaders,
      'rows/count': () => table.rows.length,
      'columns/count': () => table.headers.length,
      'worksheet/name': () => table.sheet,
      'worksheet/protection/protected': () => model.protectedSheets.has(table.sheet),
    };
    const value = values[path];
    if (value === undefined) throw new HostFault('InvalidArgument');
    this.#loaded.set(path, value());
  }

  get name(): string {
    return this.#loaded.get('name');
  }

  get showHeaders(): boolean {
    return this.#loaded.get('showHeaders');
  }

  get worksheet(): { name: string; protection: { protected: boolean } } {
    const loaded = this.#loaded;
    return {
      get name(): string {
        return loaded.get('worksheet/name');
      },
      protection: {
        get protected(): boolean {
          return loaded.get('worksheet/protection/protected');
        },
      },
    };
  }

  get rows() {
    const context = this.#context;
    const name = this.#name;
    const loaded = this.#loaded;
    return {
      get count(): number {
        return loaded.get('rows/count');
      },
      add: (index: number | undefined, values: (Cell | null)[][]): void => {
        if (index !== undefined) throw new HostFault('InvalidArgument');
        context.queue(() => context.model.addRows(name, values));
      },
      getItemAt: (row: number) => ({
        delete: () => context.queue(() => context.model.deleteRow(name, row)),
      }),
    };
  }

  get columns() {
    const loaded = this.#loaded;
    return {
      get count(): number {
        return loaded.get('columns/count');
      },
      getItemAt: (column: number) => ({
        getDataBodyRange: () =>
          new FakeRange(this.#context, this.#name, 0, column, Number.POSITIVE_INFINITY, 1),
      }),
    };
  }

  getHeaderRowRange(): FakeRange {
    return new FakeRange(this.#context, this.#name, -1, 0, 1, Number.POSITIVE_INFINITY);
  }

  getDataBodyRange(): FakeRange {
    const all = Number.POSITIVE_INFINITY;
    return new FakeRange(this.#context, this.#name, 0, 0, all, all);
  }
}
