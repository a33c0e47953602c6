import { Loaded, type Queue } from './loaded.ts';
import { HostFault } from './workbook-model.ts';

/** `workbook.names`. */
export class FakeNames {
  readonly #context: Queue;
  readonly #loaded = new Loaded();

  constructor(context: Queue) {
    this.#context = context;
  }

  load(paths: string): this {
    if (paths !== 'items/name,items/type') throw new HostFault('InvalidArgument');
    this.#context.queue(() =>
      this.#loaded.set(
        'items',
        this.#context.model.names.map(({ name, type }) => ({
          name,
          type,
          getRange: () => ({
            setDirty: () => this.#context.queue(() => this.#context.model.recalculated.push(name)),
          }),
        })),
      ),
    );
    return this;
  }

  get items(): { name: string; type: string; getRange: () => { setDirty: () => void } }[] {
    return this.#loaded.get('items');
  }
}
