import { entries, promisifyRequest } from 'idb-keyval'
import { openDatabase } from './database.js'

/** What a write puts and removes. */
export interface PartChanges {
  readonly puts: ReadonlyMap<string, unknown>
  readonly removes: readonly string[]
}

/** Where the parts of a workbook are kept by key: IndexedDB, or a stand-in of the tests. */
export interface PartStore {
  /** Everything stored, as of one moment. */
  read(): Promise<ReadonlyMap<string, unknown>>
  /**
   * Gives what is stored at `key` to `decide` and does what that says, as one transaction: all or nothing,
   * with no other write in between. Resolves when it is on disk. `decide` may throw to change nothing.
   */
  write(key: string, decide: (stored: unknown) => PartChanges): Promise<void>
  /** Puts and removes parts without a look at what is stored: what a page that goes away still gets done. */
  put(changes: PartChanges): Promise<void>
  close(): void
}

/** The parts in the IndexedDB database `name`. Rejects at the first use where a browser has or allows none. */
export function databaseParts(name: string): PartStore {
  const { useStore, close } = openDatabase(name)
  const make = (store: IDBObjectStore, { puts, removes }: PartChanges): void => {
    for (const [at, part] of puts) store.put(part, at)
    for (const at of removes) store.delete(at)
    store.transaction.commit()
  }
  return {
    read: async () =>
      new Map((await entries<IDBValidKey, unknown>(useStore)).map(([key, part]) => [String(key), part])),
    write: (key, decide) =>
      useStore('readwrite', async store => {
        make(store, decide(await promisifyRequest(store.get(key))))
      }),
    put: changes => useStore('readwrite', store => make(store, changes)),
    close,
  }
}
