import type { Larder } from '../../src/dough/document/larder.js'
import type { FromReader, Source, ToReader } from '../../src/exchange/arriving/arrival-source.js'
import { type Arrivals, arrive } from '../../src/exchange/arriving/arrive.js'
import type { Arrived, Way } from '../../src/exchange/arriving/arriving.js'
import type { RememberedColumns } from '../../src/exchange/arriving/remembered-columns.js'
import { newWorker } from '../base/workers.js'

/** How far a reading is: of rows, some of which are looked at twice. */
export interface Progress {
  readonly done: number
  readonly of: number
}

/** What was read, with a remark on how; nothing where it was stopped. */
export type Outcome = { readonly arrived: Arrived; readonly remark?: string } | undefined

/**
 * One text or file being read: in a worker, where there is one. Readers that have not run yet are slow whatever they
 * read: three hundred characters of a recipe hold a page up for 25 to 50 ms, and two thousand for 60 to 130.
 */
export class Reading {
  #arrivals: Arrivals | undefined
  #worker: Worker | undefined
  #settle: ((outcome: Outcome) => void) | undefined

  constructor(
    readonly source: Source,
    readonly larder: Larder,
    readonly remembered: RememberedColumns,
    readonly onProgress: (progress: Progress) => void,
  ) {}

  /** Reads it, or reads it again in another way. */
  read(way: Way = {}): Promise<Outcome> {
    this.#settle?.(undefined) // what is under way is no longer wanted
    if (this.#worker) return this.#ask({ way })
    if (!this.#arrivals) {
      this.#worker = newWorker('reading-worker')
      const { source, remembered } = this
      if (this.#worker) return this.#ask({ source, larder: this.larder.ingredients, remembered, way }, way)
    }
    return Promise.resolve(this.#here(way))
  }

  /** Stops for good: what is under way comes to nothing. */
  stop(): void {
    this.#worker?.terminate()
    this.#worker = undefined
    this.#settle?.(undefined)
    this.#settle = undefined
  }

  #ask(message: ToReader, first?: Way): Promise<Outcome> {
    const worker = this.#worker!
    return new Promise(resolve => {
      this.#settle = resolve
      worker.onmessage = ({ data }: MessageEvent<FromReader>) => {
        if (!('arrived' in data)) return this.onProgress(data)
        this.#settle = undefined
        resolve(data)
      }
      worker.onerror = () => {
        // It could not be fetched, say. What it was to read first is still here.
        worker.terminate()
        this.#worker = undefined
        this.#settle = undefined
        resolve(this.#here(first ?? ('way' in message ? message.way : {})))
      }
      worker.postMessage(message)
    })
  }

  #here(way: Way): Outcome {
    const { source, larder, remembered } = this
    const earlier = this.#arrivals ? { earlier: this.#arrivals } : {}
    const text = 'text' in source ? source.text : source.bytes
    this.#arrivals = arrive(text, { larder, remembered, ...way, ...earlier })
    const { arrived, remark } = this.#arrivals
    return remark === undefined ? { arrived } : { arrived, remark }
  }
}
