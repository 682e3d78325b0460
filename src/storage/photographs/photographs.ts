// Only what a start has of it anyway: a function more of the package would come with every start.
import { promisifyRequest, type UseStore } from 'idb-keyval'
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
    const stored = await this.#store('readonly', store => promisifyRequest<unknown[]>(store.getAll(range)))
    return stored
      .flatMap(one => photographIn(one) ?? [])
      .sort((a, b) => a.taken.localeCompare(b.taken) || a.id.localeCompare(b.id))
  }

  picture(photograph: Pick<Photograph, 'bake' | 'id'>): Promise<Blob | undefined> {
    const key = pictureKey(photograph)
    return this.#store('readonly', store => promisifyRequest<Blob | undefined>(store.get(key)))
  }

  put(photograph: Photograph, picture: Blob): Promise<void> {
    return this.#store('readwrite', store => {
      store.put(photograph, aboutKey(photograph))
      store.put(picture, pictureKey(photograph))
      return promisifyRequest(store.transaction)
    })
  }

  describe(photograph: Photograph, words: string): Promise<void> {
    const key = aboutKey(photograph)
    return this.#store('readwrite', async store => {
      const stored = await promisifyRequest<unknown>(store.get(key))
      store.put({ ...(photographIn(stored) ?? photograph), described: words }, key)
      await promisifyRequest(store.transaction)
    })
  }

  remove(photograph: Pick<Photograph, 'bake' | 'id'>): Promise<void> {
    return this.#delete([aboutKey(photograph), pictureKey(photograph)])
  }

  async removeOf(bake: string): Promise<void> {
    const all = await this.#store('readonly', store => promisifyRequest(store.getAllKeys()))
    await this.#delete(all.map(String).filter(key => key.split(' ')[1] === bake))
  }

  #delete(keys: readonly string[]): Promise<void> {
    return this.#store('readwrite', store => {
      for (const key of keys) store.delete(key)
      return promisifyRequest(store.transaction)
    })
  }

  close(): void {
    this.#database.close()
  }
}

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
