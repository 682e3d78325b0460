import { delMany, get, keys, setMany, type UseStore, update } from 'idb-keyval'
import { type Photograph, photographIn } from '../../day/bench/photograph.js'
import { type Database, openDatabase } from '../disk/database.js'

/** Where photographs are kept: each under keys of its own, apart from the workbook, so that no start reads and no edit writes them. */
export interface Photographs {
  /** Those of a bake, the earliest first. */
  of(bake: string): Promise<Photograph[]>
  /** Those of all bakes. */
  all(): Promise<Photograph[]>
  picture(photograph: Pick<Photograph, 'bake' | 'id'>): Promise<Blob | undefined>
  /** Keeps one; resolves when it is on disk. Rejects where the storage is full, and nothing of it is kept. */
  put(photograph: Photograph, picture: Blob): Promise<void>
  describe(photograph: Photograph, words: string): Promise<void>
  /** Deletes it for good. */
  remove(photograph: Pick<Photograph, 'bake' | 'id'>): Promise<void>
  /** Deletes those of a bake for good. */
  removeOf(bake: string): Promise<void>
  close(): void
}

const aboutKey = ({ bake, id }: Pick<Photograph, 'bake' | 'id'>): string => `about ${bake} ${id}`
const pictureKey = ({ bake, id }: Pick<Photograph, 'bake' | 'id'>): string => `picture ${bake} ${id}`

class DatabasePhotographs implements Photographs {
  readonly #database: Database

  constructor(name: string) {
    this.#database = openDatabase(`${name} photographs`)
  }

  get #store(): UseStore {
    return this.#database.useStore
  }

  async of(bake: string): Promise<Photograph[]> {
    return (await this.all()).filter(one => one.bake === bake)
  }

  async all(): Promise<Photograph[]> {
    const range = IDBKeyRange.bound('about ', 'about \uffff')
    const stored = await this.#store('readonly', store => allOf(store.getAll(range)))
    return stored
      .flatMap(one => photographIn(one) ?? [])
      .sort((a, b) => a.taken.localeCompare(b.taken) || a.id.localeCompare(b.id))
  }

  picture(photograph: Pick<Photograph, 'bake' | 'id'>): Promise<Blob | undefined> {
    return get<Blob>(pictureKey(photograph), this.#store)
  }

  put(photograph: Photograph, picture: Blob): Promise<void> {
    return setMany(
      [
        [aboutKey(photograph), photograph],
        [pictureKey(photograph), picture],
      ],
      this.#store,
    )
  }

  describe(photograph: Photograph, words: string): Promise<void> {
    return update<unknown>(
      aboutKey(photograph),
      stored => ({ ...(photographIn(stored) ?? photograph), described: words }),
      this.#store,
    )
  }

  remove(photograph: Pick<Photograph, 'bake' | 'id'>): Promise<void> {
    return delMany([aboutKey(photograph), pictureKey(photograph)], this.#store)
  }

  async removeOf(bake: string): Promise<void> {
    const own = (await keys<string>(this.#store)).filter(key => key.split(' ')[1] === bake)
    await delMany(own, this.#store)
  }

  close(): void {
    this.#database.close()
  }
}

const allOf = (request: IDBRequest<unknown[]>): Promise<unknown[]> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })

/** The photographs beside the workbook of that database. */
export const databasePhotographs = (database: string): Photographs => new DatabasePhotographs(database)

const leftForTheRest = 25e6 // bytes that stay free, so that the workbook can always be saved

/** Whether there is room for so many bytes more; true where the browser does not say. */
export async function hasRoomFor(bytes: number): Promise<boolean> {
  try {
    const { quota, usage } = await navigator.storage.estimate()
    return quota === undefined || usage === undefined || quota - usage > bytes + leftForTheRest
  } catch {
    return true
  }
}
