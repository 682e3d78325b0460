import { type Bake, type BakeTimer, minutesOf } from '../../../src/day/bench/bake.js'
import { bakesIn } from '../../../src/day/bench/bake-data.js'
import { benchOf } from '../../../src/day/bench/bench-day.js'
import { stopTimer } from '../../../src/day/bench/bench-edits.js'
import type { Workbook } from '../../../src/dough/document/workbook.js'
import { askEdit, say } from '../../base/events.js'
import { goTo, hashFrom } from '../../base/hash.js'
import { Bell } from './bell.js'
import { clockCut, runOut } from './timer-text.js'
import { bellWords, elsewhereWords } from './words.js'

const minutesNow = (): number => Date.now() / 60_000

/** A sentence across the page, with what can be done about it. */
interface Told {
  readonly tone: 'warning'
  readonly text: string
  readonly actions: readonly { readonly label: string; readonly run: () => void }[]
  readonly dismiss?: undefined
}

/** Tells of timers that run out while their bench is not the page that is open. */
export class TimersElsewhere {
  readonly #from: EventTarget
  readonly #workbook: () => Workbook | undefined
  readonly #changed: () => void
  readonly #bell = new Bell(() => {})
  #heard = minutesNow() // up to when it has rung
  #told = '' // ids of those that were in sight when it was last looked

  /** Edits are asked from `from`; `changed` is called when there are others to tell of. */
  constructor(
    from: EventTarget,
    workbook: () => Workbook | undefined,
    changed: () => void,
    gone: AbortSignal,
  ) {
    this.#from = from
    this.#workbook = workbook
    this.#changed = changed
    this.#bell.begin(false)
    const second = setInterval(this.#second, 1000)
    gone.addEventListener('abort', () => {
      clearInterval(second)
      this.#bell.end()
    })
  }

  /** Those that have run out, of benches that are not open. */
  get #over(): readonly { readonly bake: Bake; readonly timer: BakeTimer }[] {
    const workbook = this.#workbook()
    if (!workbook) return []
    const key = location.hash.startsWith('#bench/') ? hashFrom('#bench/'.length) : ''
    return bakesIn(workbook)
      .filter(({ id, day, formula }) => key === '' || ![id, day, formula.id].includes(key))
      .flatMap(bake => runOut(bake.timers, minutesNow()).map(timer => ({ bake, timer })))
  }

  #second = (): void => {
    const over = this.#over
    const now = minutesNow()
    for (const { timer } of over)
      if (minutesOf(timer.ends) > this.#heard) {
        this.#bell.ring(bellWords.over(timer.name))
        say(this.#from, bellWords.over(timer.name))
      }
    this.#heard = now
    const ids = over.map(({ timer }) => timer.id).join()
    if (ids === this.#told) return
    this.#told = ids
    this.#changed()
  }

  /** A notice of each. */
  get notices(): readonly Told[] {
    return this.#over.map(({ bake, timer }) => ({
      tone: 'warning',
      text: elsewhereWords.over(timer.name, bake.name, clockCut(minutesOf(timer.ends), bake.zone)),
      actions: [
        { label: elsewhereWords.stop, run: () => this.#stop(bake, timer) },
        { label: elsewhereWords.toBench, run: () => goTo(`bench/${bake.day ?? bake.id}`) },
      ],
    }))
  }

  #stop(bake: Bake, timer: BakeTimer): void {
    const now = minutesNow()
    const refusal = askEdit(this.#from, workbook => {
      const bench = benchOf(workbook, bake.id, now, bake.zone)
      return bench && stopTimer(workbook, { bench, now, planned: new Map() }, timer)
    })
    if (refusal) say(this.#from, refusal)
  }
}
