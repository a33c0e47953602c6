/** The browser's own storage, as promises. What a transaction writes is there whole or not at all. */
export interface Database {
  /**
   * Runs work in one transaction over all that is kept, and resolves once what it wrote is on the device. The work
   * awaits nothing but the store's own answers. Rejects with the browser's error, and then nothing was written.
   */
  run<T>(mode: IDBTransactionMode, work: (stores: Stores) => Promise<T>): Promise<T>;
}

export interface Stores {
  get<T>(store: StoreName, key: string): Promise<T | undefined>;
  all<T>(store: StoreName): Promise<readonly T[]>;
  put(store: StoreName, key: string, value: unknown): void;
  delete(store: StoreName, key: string): void;
}

const STORES = ['books', 'texts', 'last words'] as const;
export type StoreName = (typeof STORES)[number];

/** Opens the storage that all pages of this address share. */
export async function openDatabase(): Promise<Database> {
  const request = indexedDB.open('pour-ledger', 1);
  request.onupgradeneeded = () => {
    for (const store of STORES) request.result.createObjectStore(store);
  };
  const database = await answerOf(request);
  // A later version of the page may want to change the stores.
  database.onversionchange = () => {
    database.close();
  };
  return { run: (mode, work) => runIn(database, mode, work) };
}

function runIn<T>(
  database: IDBDatabase,
  mode: IDBTransactionMode,
  work: (stores: Stores) => Promise<T>,
): Promise<T> {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(STORES, mode, { durability: 'strict' });
    let answer: T;
    let failure: unknown;
    transaction.oncomplete = () => {
      resolve(answer);
    };
    transaction.onabort = () => {
      reject(asError(failure ?? transaction.error));
    };
    work(storesOf(transaction)).then(
      (value) => {
        answer = value;
      },
      (error: unknown) => {
        failure ??= transaction.error ?? error;
        // An answer that failed has broken the transaction off already.
        if (transaction.error === null) transaction.abort();
      },
    );
  });
}

const storesOf = (transaction: IDBTransaction): Stores => ({
  get: <T>(store: StoreName, key: string) =>
    answerOf(transaction.objectStore(store).get(key) as IDBRequest<T | undefined>),
  all: <T>(store: StoreName) =>
    answerOf(transaction.objectStore(store).getAll() as IDBRequest<T[]>),
  put(store, key, value) {
    transaction.objectStore(store).put(value, key);
  },
  delete(store, key) {
    transaction.objectStore(store).delete(key);
  },
});

const answerOf = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => {
      resolve(request.result);
    };
    request.onerror = () => {
      reject(asError(request.error));
    };
  });

const asError = (thrown: unknown): Error =>
  thrown instanceof Error ? thrown : new Error('The browser broke off.');
