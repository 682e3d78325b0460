import type { Formula } from '../../src/dough/document/formula.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import type { PartChanges, PartStore } from '../../src/storage/disk/parts.js'
import type { Texts } from '../../src/storage/disk/small-texts.js'
import { openKeeper } from '../../src/storage/keeper.js'
import type { Keeper } from '../../src/storage/keeping.js'
import type { TabEvents, Tabs } from '../../src/storage/tabs.js'

/** What a disk may do to a write. `unheard`: it is written, and the browser reports a failure all the same. */
type Fault = 'interrupted' | 'full' | 'unheard' | 'never ends'

/** A disk in memory: parts by key, copied in and out as IndexedDB does. */
export class Disk implements PartStore {
  readonly written: string[][] = [] // the keys of each write
  refuses = false
  refusal = new DOMException('No storage here.', 'SecurityError')
  fault: Fault | undefined // of the next write
  drops = false // what is put without a look, as WebKit does when the page goes away
  beforeCommit: (() => void) | undefined

  /** A page of its own sees the parts through a `Disk` of its own. */
  constructor(public parts = new Map<string, unknown>()) {}

  async read(): Promise<ReadonlyMap<string, unknown>> {
    if (this.refuses) throw this.refusal
    return structuredClone(this.parts)
  }

  async write(key: string, decide: Parameters<PartStore['write']>[1]): Promise<void> {
    if (this.refuses) throw this.refusal
    const { puts, removes } = decide(structuredClone(this.parts.get(key)))
    await Promise.resolve() // a disk takes its time
    this.beforeCommit?.()
    const { fault } = this
    this.fault = undefined
    if (fault === 'never ends') return new Promise(() => {})
    if (fault === 'full') throw new DOMException('Too much.', 'QuotaExceededError')
    if (fault === 'interrupted') throw new DOMException('The page went away.', 'AbortError')
    for (const [at, part] of puts) this.parts.set(at, structuredClone(part))
    for (const at of removes) this.parts.delete(at)
    this.written.push([...puts.keys(), ...removes.map(at => `-${at}`)])
    if (fault === 'unheard') throw new DOMException('The connection closed.', 'AbortError')
  }

  async put({ puts, removes }: PartChanges): Promise<void> {
    if (this.refuses) throw this.refusal
    if (this.drops) return new Promise(() => {})
    for (const [at, part] of puts) this.parts.set(at, structuredClone(part))
    for (const at of removes) this.parts.delete(at)
  }

  close(): void {}
}

/** The browser's small storage in memory. */
export class SmallTexts implements Texts {
  readonly kept = new Map<string, string>()
  full = false

  getItem(key: string): string | null {
    return this.kept.get(key) ?? null
  }

  setItem(key: string, value: string): void {
    if (this.full) throw new DOMException('Too much.', 'QuotaExceededError')
    this.kept.set(key, value)
  }
}

/** A keeper on a disk, with what it said, and the other tabs' part played by the test. */
export interface Bench {
  readonly keeper: Keeper
  readonly said: string[] // states, consecutive ones only once
  readonly loaded: { workbook: Workbook; why: string }[] // what came from elsewhere
  readonly others: TabEvents // to speak for the other tabs
  leave(): void // the page is hidden
}

export async function keeperOn(
  disk: PartStore,
  options: {
    mayWrite?: boolean
    onState?: () => void
    persist?: () => Promise<boolean>
    prepare?: (formulas: readonly Formula[]) => Promise<void>
    texts?: Texts
  } = {},
): Promise<Bench> {
  const said: string[] = []
  const loaded: Bench['loaded'] = []
  let others: TabEvents | undefined
  let leave = () => {}
  const keeper = await openKeeper({
    database: 'a bench',
    parts: disk,
    onState: ({ status }) => {
      if (said.at(-1) !== status) said.push(status)
      options.onState?.()
    },
    onWorkbook: (workbook, why) => loaded.push({ workbook, why }),
    tabs: (_, events): Tabs => {
      others = events
      return {
        enter: async () => options.mayWrite ?? true,
        takeOver: () => events.gained(),
        saved() {},
        leave() {},
      }
    },
    onLeave: listener => {
      leave = listener
      return () => {}
    },
    ...(options.prepare && { prepare: options.prepare }),
    ...(options.texts && { texts: options.texts }),
    persist: options.persist ?? (async () => false),
  })
  await keeper.fetchRest() // as a page does when it is idle
  return { keeper, said, loaded, others: others!, leave: () => leave() }
}
