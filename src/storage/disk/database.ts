import type { UseStore } from 'idb-keyval'

/** One IndexedDB database with one key-value store, for idb-keyval's functions. */
export interface Database {
  readonly useStore: UseStore
  close(): void
}

const storeName = 'workbook'

/**
 * The database `name`, which begins to open at once. What a use resolves to is on disk: it waits for the
 * transaction to complete, and asks for `durability: 'strict'`, since the usual relaxed durability reports
 * completion before the operating system has flushed. When the callback throws or rejects, nothing of it is kept.
 */
export function openDatabase(name: string): Database {
  let opening: Promise<IDBDatabase> | undefined

  function connect(): Promise<IDBDatabase> {
    const forget = () => {
      opening = undefined
    }
    if (!opening) {
      opening = open(name, forget)
      opening.catch(forget)
    }
    return opening
  }

  async function begin(mode: IDBTransactionMode): Promise<IDBTransaction> {
    const connection = await connect()
    try {
      return connection.transaction(storeName, mode, { durability: 'strict' })
    } catch (error) {
      // Safari closes connections of pages in the background, and "delete site data" does in every browser,
      // at times without a `close` event: the symptom is InvalidStateError here. Once more, then give up.
      if (!(error instanceof DOMException && error.name === 'InvalidStateError')) throw error
      opening = undefined
      return (await connect()).transaction(storeName, mode, { durability: 'strict' })
    }
  }

  connect().catch(() => {}) // told to the first use, which tries again

  return {
    useStore: async (mode, callback) => {
      const transaction = await begin(mode)
      // Listeners, not `oncomplete`: idb-keyval sets that property.
      const complete = new Promise<void>((resolve, reject) => {
        transaction.addEventListener('complete', () => resolve())
        transaction.addEventListener('abort', () =>
          reject(transaction.error ?? new Error('The save was interrupted.')),
        )
      })
      complete.catch(() => {}) // awaited below, unless the callback fails first
      try {
        const value = await callback(transaction.objectStore(storeName))
        await complete
        return value
      } catch (error) {
        // A quota reached shows as an error of the transaction, and only as AbortError on its requests.
        if (transaction.error) throw transaction.error
        abort(transaction)
        throw error
      }
    },
    close() {
      const closing = opening
      opening = undefined
      closing?.then(
        connection => connection.close(),
        () => {},
      )
    },
  }
}

function open(name: string, onClosed: () => void): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, 1)
    request.onupgradeneeded = () => request.result.createObjectStore(storeName)
    request.onerror = () => reject(request.error)
    request.onsuccess = () => {
      const connection = request.result
      connection.onclose = onClosed
      // Another tab wants to upgrade or delete the database and waits for this connection.
      connection.onversionchange = () => {
        onClosed()
        connection.close()
      }
      resolve(connection)
    }
  })
}

function abort(transaction: IDBTransaction): void {
  try {
    transaction.abort()
  } catch {
    // It had ended by itself.
  }
}
