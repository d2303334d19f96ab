/** The browser's own database, as plain promises. Every act rejects where the browser allows no storage. */
export interface KeptRecords {
  keys(): Promise<readonly string[]>;
  read(key: string): Promise<unknown>;
  write(key: string, value: unknown): Promise<void>;
  remove(key: string): Promise<void>;
}

const databaseName = "drysill";
const stores = ["recent", "unsaved"] as const;

export function keptRecords(store: (typeof stores)[number]): KeptRecords {
  const within = async <T>(mode: IDBTransactionMode, act: (records: IDBObjectStore) => IDBRequest<T>) => {
    const database = await opened();
    try {
      const transaction = database.transaction(store, mode);
      const answer = await settled(act(transaction.objectStore(store)));
      await finished(transaction);
      return answer;
    } finally {
      database.close();
    }
  };
  return {
    keys: async () => (await within("readonly", (records) => records.getAllKeys())).map(String),
    read: (key) => within("readonly", (records) => records.get(key)),
    write: async (key, value) => void (await within("readwrite", (records) => records.put(value, key))),
    remove: (key) => within("readwrite", (records) => records.delete(key)),
  };
}

function opened(): Promise<IDBDatabase> {
  const request = indexedDB.open(databaseName, 1);
  request.onupgradeneeded = () => {
    for (const name of stores) request.result.createObjectStore(name);
  };
  return settled(request);
}

function settled<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** A write is on the disk only when its transaction is complete. */
function finished(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error);
  });
}
