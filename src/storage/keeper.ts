import type { Day } from '../dough/document/day.js'
import { newId } from '../dough/document/formula.js'
import { sameData } from '../dough/document/same-data.js'
import type { Workbook } from '../dough/document/workbook.js'
import { Pace } from './disk/pace.js'
import { askToPersist, onPageLeave } from './disk/page.js'
import { databaseParts, type PartStore } from './disk/parts.js'
import { pageTexts, SmallText } from './disk/small-texts.js'
import { guarded } from './guarded.js'
import type { Keeper, KeeperOptions } from './keeping.js'
import type { KeeperNews } from './news.js'
import type * as Coming from './record/coming-together.js'
import type { Merged } from './record/merge.js'
import type { ReadData } from './record/read-part.js'
import {
  ChangedElsewhere,
  changesTo,
  damagedParts,
  headKey,
  holdDays,
  nothingStored,
  readStored,
  type Stored,
  stepsKey,
  unsavedKey,
} from './record/record.js'
import { type TypedText, typedKey } from './record/typed-texts.js'
import { type Failure, failureOf, type KeeperFacts, type KeeperState, stateOf } from './state.js'
import { openTabs, type Tabs } from './tabs.js'
import { loadLabels, storageFault, storageProblem } from './words.js'

const mostTries = 5 // of a save while other tabs keep saving in between
const untyped: readonly TypedText[] = []

/** Loads the workbook and resolves when it can be shown; a failure to load or save is a state, never a rejection. */
export async function openKeeper(options: KeeperOptions): Promise<Keeper> {
  const keeper = new StorageKeeper(options)
  await keeper.open()
  return keeper
}

class StorageKeeper implements Keeper {
  workbook: Workbook = nothingStored.workbook
  state: KeeperState = { status: 'loading' }
  fresh = false
  persisted: boolean | undefined
  readonly #onState: (state: KeeperState) => void
  readonly #onWorkbook: (workbook: Workbook, why: string) => void
  readonly #prepare: NonNullable<KeeperOptions['prepare']>
  readonly #stepsToKeep: () => unknown
  readonly #persist: () => Promise<boolean>
  readonly #parts: PartStore
  readonly #left: SmallText // what the page before could not save as it went
  readonly #tabs: Tabs
  readonly #stopListening: () => void
  #stored: Stored = nothingStored
  #unheard: readonly Stored[] = [] // saves under way, or failed by report, that may yet be on the disk
  readonly #takenIn = new Set<string>() // keys of unsaved edits that the next save makes needless
  #copies: readonly KeeperNews[] = []
  #together: typeof Coming | undefined
  #readDay: ReadData<Day> = () => undefined // until there are days
  #loaded = false
  #holds = false // the right to write; the role follows when the workbook has been reloaded
  #role: KeeperFacts['role'] = 'reader'
  #saving = false
  #failure: Failure | undefined
  unread = true
  #asked = false // for persistence
  readonly #pace = new Pace(() => void this.flush())
  #typed = untyped
  #typedStored = this.#typed // as far as this tab has written it
  #turn: Promise<unknown> = Promise.resolve()

  constructor(options: KeeperOptions) {
    this.#onState = guarded(options.onState)
    this.#onWorkbook = guarded(options.onWorkbook ?? (() => {}))
    this.#prepare = options.prepare ?? (async () => {})
    this.#stepsToKeep = options.stepsToKeep ?? (() => undefined)
    this.#persist = options.persist ?? askToPersist
    this.#parts = options.parts ?? databaseParts(options.database)
    this.#left = new SmallText(`tarebook left ${options.database}`, options.texts ?? pageTexts())
    this.#tabs = (options.tabs ?? openTabs)(options.database, {
      gained: () => this.#gained(),
      lost: () => this.#lost(),
      asked: () => this.#handOver(),
      saved: () => void this.#inTurn(() => this.#reload()),
    })
    this.#stopListening = (options.onLeave ?? onPageLeave)(() => this.#leave())
    this.#onState(this.state)
  }

  async open(): Promise<void> {
    // The lock first: what is read after it is what its last holder has saved.
    if (await this.#tabs.enter()) this.#holds = true
    if (this.#holds) this.#role = 'writer'
    await this.#inTurn(() => this.#reload())
    const { head, damagedHead } = this.#stored
    this.fresh = !this.unread && !this.#dirty && head === undefined && damagedHead === undefined
    this.#loaded = true
    this.#tell()
    if (this.#dirty) void this.flush()
  }

  get problems(): readonly KeeperNews[] {
    return [...this.#stored.damage, ...this.#copies]
  }

  async damaged(): Promise<ReadonlyMap<string, unknown>> {
    return damagedParts(this.#stored, await this.#parts.read())
  }

  keep(workbook: Workbook): void {
    if (workbook === this.workbook) return
    this.workbook = workbook
    this.#askToPersist()
    void this.fetchRest().catch(() => {})
    this.#pace.soon()
    this.#tell()
  }

  async flush(): Promise<void> {
    if (this.unread) await this.#inTurn(() => this.#reload())
    if (this.#dirty || this.#isTyping) this.#pace.begun()
    for (let before: Stored | undefined; this.#dirty && before !== this.#stored; ) {
      before = this.#stored
      await this.#inTurn(() => this.#save())
    }
    if (this.#isTyping) await this.#inTurn(() => this.#saveTyped())
  }

  async takeOver(): Promise<void> {
    await this.#tabs.takeOver()
  }

  async close(): Promise<void> {
    this.#stopListening()
    await this.flush()
    this.#tabs.leave()
    this.#parts.close()
  }

  get left(): readonly TypedText[] {
    return this.#stored.typed
  }

  type(texts: readonly TypedText[]): void {
    if (sameData(texts, this.#typed)) return
    this.#typed = texts
    this.#pace.soon()
    this.#tell()
  }

  get atRisk(): boolean {
    const { state } = this
    if (state.status === 'waiting' || state.status === 'saving') return this.#pace.isLate
    return (
      state.status === 'refused' || state.status === 'full' || (state.status === 'read-only' && state.unsaved)
    )
  }

  get steps(): unknown {
    return this.workbook === this.#stored.workbook ? this.#stored.steps : undefined
  }

  get #isTyping(): boolean {
    return this.#typed !== this.#typedStored
  }

  get #dirty(): boolean {
    return this.workbook !== this.#stored.workbook || this.#takenIn.size > 0
  }

  get #mayWrite(): boolean {
    return this.#role !== 'reader' && !this.#stored.newer
  }

  /** One save or reload at a time: each sets out from what the one before found. */
  async #inTurn(work: () => Promise<unknown>): Promise<void> {
    const before = this.#turn
    this.#turn = before.then(work)
    await this.#turn
  }

  async #save(): Promise<void> {
    this.#saving = true
    for (let tries = 0; this.#dirty && this.#mayWrite && tries < mostTries; tries++) {
      this.#tell()
      if ((await this.#write()) !== 'changed elsewhere') break
      if (!(await this.#reload())) break
    }
    this.#saving = false
    this.#tell()
  }

  /** Saves what is being typed where no edit was to be saved: with an edit it goes along. */
  async #saveTyped(): Promise<void> {
    if (!this.#isTyping || !this.#mayWrite) return
    const typed = this.#typed
    try {
      await this.#parts.put({ puts: new Map([[typedKey, typed]]), removes: [] })
      this.#typedStored = typed
      if (!this.#dirty) this.#failure = undefined
      this.#ended()
    } catch (error) {
      this.#failed(error)
    }
    this.#tell()
  }

  async #write(): Promise<'ended' | 'changed elsewhere'> {
    const { workbook } = this
    const typed = this.#typed
    const takenIn = [...this.#takenIn]
    let attempt: Stored | undefined
    try {
      await this.#parts.write(headKey, head => {
        const changes = changesTo(workbook, head, [this.#stored, ...this.#unheard], takenIn)
        attempt = changes.stored
        this.#unheard = [...this.#unheard, attempt].slice(-mostTries)
        // In one with the edit: what was entered is not being typed any more, and is never in neither.
        const puts = new Map(changes.puts)
        if (typed !== this.#typedStored) puts.set(typedKey, typed)
        const steps = workbook === this.workbook ? this.#stepsToKeep() : undefined
        if (steps) puts.set(stepsKey, { mark: changes.stored.head!.mark, steps })
        return { ...changes, puts }
      })
    } catch (error) {
      if (error instanceof ChangedElsewhere) return 'changed elsewhere'
      this.#failed(error)
      return 'ended'
    }
    this.#stored = attempt!
    this.#typedStored = typed
    for (const key of takenIn) this.#takenIn.delete(key)
    this.#unheard = []
    this.#failure = undefined
    this.#ended()
    this.#tabs.saved()
    return 'ended'
  }

  /** A save has ended well. */
  #ended(): void {
    this.#pace.ended()
    if (!this.#dirty && !this.#isTyping) this.#left.text = ''
  }

  #failed(error: unknown): void {
    const failure = failureOf(error, this.unread)
    if (failure === 'newer') this.#stored = { ...this.#stored, newer: true }
    else this.#failure = failure
    console.warn(storageFault, error)
  }

  /** Takes in what is stored; edits not saved are merged with it. Resolves to whether storage could be read. */
  async #reload(): Promise<boolean> {
    let theirs: Stored
    try {
      const parts = await this.#readParts()
      await this.#fetchDays(parts)
      theirs = readStored(parts, this.#stored, this.#readDay)
    } catch (error) {
      this.#failed(error)
      this.#tell()
      return false
    }
    const together = this.#loaded || theirs.unsaved.size > 0 ? await this.fetchRest() : undefined
    await this.#prepare([...theirs.workbook.formulas, ...(together?.unsavedFormulas(theirs) ?? [])])
    this.unread = false
    const { mark } = theirs.head ?? {}
    const known = mark === this.#stored.head?.mark && theirs.newer === this.#stored.newer
    const left = this.#holds ? [...theirs.unsaved].filter(([key]) => !this.#takenIn.has(key)) : []
    if (this.#loaded && known && left.length === 0) {
      if (!this.#dirty) this.#failure = undefined
      this.#tell()
      return true
    }

    for (const key of this.#takenIn) if (!theirs.unsaved.has(key)) this.#takenIn.delete(key) // by another tab
    // After "delete site data" the workbook on the screen is the only one: it is new to the storage.
    const emptied = this.#stored.head !== undefined && theirs.head === undefined && !theirs.damagedHead
    const base = emptied
      ? nothingStored
      : (this.#unheard.find(attempt => attempt.head?.mark === mark) ?? this.#stored)
    const before = this.workbook
    const copies: string[] = []
    const mergeWith = (merged: Merged): void => {
      this.workbook = merged.workbook
      copies.push(...merged.copies)
    }
    if (together && (this.#dirty || emptied))
      mergeWith(together.merge(base.workbook, this.workbook, theirs.workbook))
    else this.workbook = theirs.workbook
    for (const [key, edits] of left) {
      const merged = together?.takeIn(edits, theirs, this.workbook, this.#readDay)
      if (!merged) continue // unreadable, or of a newer version: left where it is
      this.#takenIn.add(key)
      mergeWith(merged)
    }
    this.#stored = theirs
    if (!this.#dirty) this.#failure = undefined // of an earlier load

    const kept = copies.map(copy => storageProblem({ code: 'keptAsCopy', copy }))
    this.#copies = [...this.#copies, ...kept]
    if (this.workbook !== before && this.#loaded) {
      this.#onWorkbook(this.workbook, loadLabels.changedElsewhere(kept.map(told => told.message)))
    }
    this.#tell()
    return true
  }

  async #readParts(): Promise<ReadonlyMap<string, unknown>> {
    const parts = await this.#parts.read()
    const { text } = this.#left
    return text ? (await this.fetchRest()).withLeft(parts, text) : parts
  }

  /** Fetches what brings edits of two tabs together, and what writes down those of a page that goes away. */
  async fetchRest(): Promise<typeof Coming> {
    this.#together ??= await import('./record/coming-together.js')
    return this.#together
  }

  /** Fetches what reads days, where there may be any: most workbooks have none, and a page begins without it. */
  async #fetchDays(parts: ReadonlyMap<string, unknown>): Promise<void> {
    if (!holdDays(parts)) return
    try {
      this.#readDay = (await import('../dough/data/day-data.js')).readDayData
    } catch (error) {
      console.warn(storageFault, error) // the days stay stored, and are told as not read
    }
  }

  async #gained(): Promise<void> {
    this.#holds = true
    await this.#inTurn(() => this.#reload())
    if (!this.#holds) return // lost again meanwhile
    this.#role = 'writer'
    this.#tell()
    if (this.#dirty) void this.flush()
  }

  #lost(): void {
    this.#holds = false
    this.#role = 'reader'
    this.#tell()
  }

  async #handOver(): Promise<void> {
    this.#role = 'leaving'
    this.#tell()
    await this.flush()
    this.#lost()
  }

  #leave(): void {
    if ((this.#dirty || this.#isTyping) && this.#mayWrite && this.#loaded) {
      const puts = new Map<string, unknown>([[typedKey, this.#typed]])
      const removes = this.#dirty && this.#together ? [...this.#takenIn] : []
      const [stored, underWay] = [this.#stored, this.#unheard]
      if (this.#dirty && this.#together) {
        const key = unsavedKey(newId())
        puts.set(key, this.#together.unsavedEdits(this.workbook, stored, underWay))
        this.#takenIn.add(key)
      }
      const typed = this.#typedStored === untyped ? stored.typed : this.#typedStored
      if (this.#together) this.#left.text = this.#together.leftText({ puts, stored, underWay, typed })
      this.#parts.put({ puts, removes }).catch(error => this.#failed(error))
    }
    void this.flush()
  }

  #askToPersist(): void {
    if (this.#asked) return
    this.#asked = true
    this.#persist().then(
      answer => {
        this.persisted = answer
        this.#onState(this.state)
      },
      () => {}, // unanswered
    )
  }

  #tell(): void {
    const state = stateOf({
      loaded: this.#loaded,
      newer: this.#stored.newer,
      role: this.#role,
      dirty: this.#dirty || (this.#isTyping && this.#mayWrite),
      saving: this.#saving,
      failure: this.#failure,
      savedAt: this.#stored.head?.savedAt,
    })
    if (JSON.stringify(state) === JSON.stringify(this.state)) return
    this.state = state
    this.#onState(state)
  }
}
