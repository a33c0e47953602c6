import { HostFault, type WorkbookModel } from './workbook-model.ts';

/** What a proxy needs of its request context. */
export interface Queue {
  readonly model: WorkbookModel;
  queue(operation: () => void): void;
  sync(): Promise<void>;
}

/** Properties by path, as loaded; reading any other throws as the real client does. */
export class Loaded {
  readonly #values = new Map<string, unknown>();

  set(path: string, value: unknown): void {
    this.#values.set(path, value);
  }

  get<T>(path: string): T {
    if (!this.#values.has(path)) {
      throw new HostFault('PropertyNotLoaded');
    }
    return this.#values.get(path) as T;
  }
}
