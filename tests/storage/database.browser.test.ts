import { get, promisifyRequest, set } from 'idb-keyval'
import { openDatabase } from '../../src/storage/disk/database'
import { equal } from '../assert'

const failure = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => 'none',
    error => (error as Error).message,
  )

/** The name of what is thrown, which is the standard's; its message is each browser's own. */
function nameOfFault(work: () => void): string {
  try {
    work()
  } catch (error) {
    return (error as DOMException).name
  }
  return 'none'
}

describe('The database', () => {
  let name: string
  let database: ReturnType<typeof openDatabase>

  beforeEach(() => {
    name = `test ${crypto.randomUUID()}`
    database = openDatabase(name)
  })

  afterEach(async () => {
    database.close()
    await promisifyRequest(indexedDB.deleteDatabase(name))
  })

  it('asks for strict durability and resolves when the transaction is complete', async () => {
    const transaction = await database.useStore('readwrite', store => {
      store.put('rye', 'flour')
      return store.transaction
    })
    equal(transaction.durability, 'strict')
    equal(
      nameOfFault(() => transaction.abort()),
      'InvalidStateError',
      'it is finished',
    )
    equal(await get('flour', database.useStore), 'rye')
  })

  it('keeps nothing of a use that fails half way', async () => {
    await set('flour', 'rye', database.useStore)
    const message = await failure(
      database.useStore('readwrite', store => {
        store.put('spelt', 'flour')
        throw new Error('changed my mind')
      }),
    )
    equal(message, 'changed my mind')
    equal(await get('flour', database.useStore), 'rye')
  })

  it('says so when a transaction is interrupted after its requests have succeeded', async () => {
    const message = await failure(
      database.useStore('readwrite', async store => {
        await promisifyRequest(store.put('rye', 'flour'))
        store.transaction.abort()
      }),
    )
    equal(message, 'The save was interrupted.')
  })

  it('opens again when its connection was closed underneath', async () => {
    await set('flour', 'rye', database.useStore)
    await database.useStore('readonly', store => store.transaction.db.close())
    equal(await get('flour', database.useStore), 'rye')
  })

  it('lets go of its connection for a tab that deletes the database, and opens it again', async () => {
    await set('flour', 'rye', database.useStore)
    await promisifyRequest(indexedDB.deleteDatabase(name))
    equal(await get('flour', database.useStore), undefined)
  })
})
