/** Reads large files off the main thread. It is stopped by being ended. */
import { larderOf } from '../dough/document/larder.js'
import { arrivalFrom, type FromReader, type ToReader } from '../exchange/arriving/arrival-source.js'
import type { Arrival } from '../exchange/arriving/arriving.js'

// TypeScript's library for workers cannot be loaded beside that of pages: here is what is used of it.
interface ReaderScope {
  postMessage(message: FromReader): void
  addEventListener(name: 'message', hear: (event: MessageEvent<ToReader>) => void): void
}
const reader = self as unknown as ReaderScope

let arrival: Arrival | undefined
let remark: string | undefined

reader.addEventListener('message', ({ data }) => {
  if ('source' in data) {
    const from = arrivalFrom(data.source, larderOf(data.larder), data.remembered)
    if ('refusal' in from) {
      reader.postMessage({ arrived: { as: 'refused', why: from.refusal } })
      return
    }
    arrival = from.arrival
    remark = from.remark
  }
  if (!arrival) return
  const arrived = arrival.read(data.way, { progress: (done, of) => reader.postMessage({ done, of }) })
  reader.postMessage(remark === undefined ? { arrived } : { arrived, remark })
})
