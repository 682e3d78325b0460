/**
 * A page for when the other does not start: finds what is stored and hands it over. All that it needs is imported at once:
 * nothing is to be fetched when something is wrong already.
 */
import { downloadJson } from '../../components/base/download.js'
import { readDayData } from '../dough/data/day-data.js'
import { writeWorkbookFile } from '../exchange/data/workbook-file.js'
import { asJson } from '../storage/record/as-json.js'
import { readStored } from '../storage/record/record.js'
import { rescueWords } from './rescue-words.js'

/** Everything in a database, by its keys; undefined where there is none of that name. It is not made by looking. */
function everythingIn(name: string): Promise<ReadonlyMap<string, unknown> | undefined> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(name)
    opening.onupgradeneeded = () => opening.transaction?.abort()
    opening.onerror = () =>
      opening.error?.name === 'AbortError' ? resolve(undefined) : reject(opening.error)
    opening.onsuccess = () => {
      const connection = opening.result
      const parts = new Map<string, unknown>()
      const stores = [...connection.objectStoreNames]
      if (stores.length === 0) return resolve(parts)
      const reading = connection.transaction(stores)
      for (const store of stores) {
        reading.objectStore(store).openCursor().onsuccess = ({ target }) => {
          const cursor = (target as IDBRequest<IDBCursorWithValue | null>).result
          if (!cursor) return
          parts.set(String(cursor.key), cursor.value)
          cursor.continue()
        }
      }
      reading.oncomplete = () => resolve(parts)
      reading.onerror = () => reject(reading.error)
    }
  })
}

const found = document.querySelector('#found')!

function offer(id: string, run: () => void): void {
  const button = document.querySelector<HTMLButtonElement>(`#${id}`)!
  button.hidden = false
  button.onclick = run
}

async function look(): Promise<void> {
  const parts = await everythingIn(new URLSearchParams(location.search).get('database') || 'tarebook')
  if (!parts?.size) {
    found.textContent = rescueWords.nothing
    return
  }
  offer('raw', () => downloadJson(asJson(parts), 'tarebook-damaged'))
  const { workbook, damage } = readStored(parts, undefined, readDayData)
  found.textContent = rescueWords.found(workbook.formulas.length, damage.length)
  if (workbook.formulas.length > 0) offer('file', () => downloadJson(writeWorkbookFile(workbook), 'tarebook'))
}

look().catch(() => {
  found.textContent = rescueWords.notRead
})
