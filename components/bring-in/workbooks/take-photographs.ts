import type { PhotographsInFile } from '../../../src/exchange/data/photographs-in-file.js'
import { databasePhotographs, hasRoomFor } from '../../../src/storage/photographs/photographs.js'
import { databaseOfPage } from '../../base/asked-of-page.js'
import { photographsTaken } from './words.js'

/** Keeps the photographs of a workbook file, one after the other, where their bakes are here; says in a sentence how many. */
export async function takePhotographs(
  photographs: PhotographsInFile,
  bakes: ReadonlySet<string>,
): Promise<string> {
  const store = databasePhotographs(databaseOfPage())
  let [kept, left] = [0, 0]
  let isFull = false
  try {
    const here = new Set((await store.all()).map(({ id }) => id))
    for await (const { photograph, picture } of photographs.read()) {
      if (here.has(photograph.id) || !bakes.has(photograph.bake)) continue
      isFull ||= !(await hasRoomFor(picture.size))
      if (isFull) left += 1
      else {
        await store.put(photograph, picture)
        kept += 1
      }
    }
  } catch {
    isFull = true
  } finally {
    store.close()
  }
  return photographsTaken(kept, isFull ? Math.max(1, left) : 0)
}
