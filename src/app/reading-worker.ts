/** Reads large files off the main thread. It is stopped by being ended. */
import { larderOf } from '../dough/document/larder.js'
import type { FromReader, ToReader } from '../exchange/arriving/arrival-source.js'
import { type Arrivals, type ArriveOptions, arrive } from '../exchange/arriving/arrive.js'

// TypeScript's library for workers cannot be loaded beside that of pages: here is what is used of it.
interface ReaderScope {
  postMessage(message: FromReader): void
  addEventListener(name: 'message', hear: (event: MessageEvent<ToReader>) => void): void
}
const reader = self as unknown as ReaderScope

let source: string | Uint8Array = ''
let options: ArriveOptions = {}
let earlier: Arrivals | undefined

reader.addEventListener('message', ({ data }) => {
  if ('source' in data) {
    source = 'text' in data.source ? data.source.text : data.source.bytes
    options = {
      larder: larderOf(data.larder),
      remembered: data.remembered,
      watch: { progress: (done, of) => reader.postMessage({ done, of }) },
    }
    earlier = undefined
  }
  earlier = arrive(source, { ...options, ...data.way, ...(earlier ? { earlier } : {}) })
  const { arrived, remark } = earlier // what is shown; the rest is not sent across
  reader.postMessage(remark === undefined ? { arrived } : { arrived, remark })
})
