import { type Formula, newId, type Problem } from '../dough/document/formula.js'
import { sameData } from '../dough/document/same-data.js'
import type { Workbook } from '../dough/document/workbook.js'
import { Pace } from './disk/pace.js'
import { askToPersist, onPageLeave } from './disk/page.js'
import { databaseParts, type PartStore } from './disk/parts.js'
import { guarded } from './guarded.js'
import { type Merged, merge } from './merge.js'
import {
  ChangedElsewhere,
  changesTo,
  headKey,
  nothingStored,
  readStored,
  type Stored,
  unsavedKey,
  WrittenByNewer,
} from './record.js'
import { type KeeperFacts, type KeeperState, stateOf } from './state.js'
import { openTabs, type TabEvents, type Tabs } from './tabs.js'
import { type TypedText, typedKey } from './typed-texts.js'
import { takeIn, unsavedEdits, unsavedFormulas } from './unsaved.js'
import { loadLabels, storageFault, storageProblem } from './words.js'

/** Keeps a workbook in the browser's storage. */
export interface Keeper {
  /** The workbook as it stands: what `keep` was last given, or what came from another tab since. */
  readonly workbook: Workbook
  readonly state: KeeperState
  /** Whether the database had no workbook when it was opened. */
  readonly fresh: boolean
  /** What could not be read, and what was kept as a copy because two tabs had changed it. */
  readonly problems: readonly Problem[]
  /** The browser's answer to keeping the workbook when disk space runs low; undefined until asked, at the first edit. */
  readonly persisted: boolean | undefined
  /** To be called after every edit. Saves 400 ms after the last, 1 s after the first, at once when the page is left. */
  keep(workbook: Workbook): void
  /** What stood in fields and was not entered when the page that edited before this one went away. */
  readonly left: readonly TypedText[]
  /** To be called with all that is being typed, whenever it changes: it is saved as edits are. */
  type(texts: readonly TypedText[]): void
  /** Whether going away now may lose something: storage fails, or has not answered for a while. */
  readonly atRisk: boolean
  /** Saves now, also after a failure. Resolves when that has ended; `state` says how. */
  flush(): Promise<void>
  /** Makes this the tab that edits. */
  takeOver(): Promise<void>
  /** Saves and lets go of database and lock. */
  close(): Promise<void>
}

export interface KeeperOptions {
  readonly database: string // name of the IndexedDB database and of the lock
  readonly onState: (state: KeeperState) => void
  /** The workbook changed other than by `keep`; `why` is a sentence for the baker. */
  readonly onWorkbook?: (workbook: Workbook, why: string) => void
  /** Awaited before formulas that were read are taken in; must not reject. */
  readonly prepare?: (formulas: readonly Formula[]) => Promise<void>
  // What follows is the browser's unless given, as tests do.
  readonly parts?: PartStore
  readonly tabs?: (database: string, events: TabEvents) => Tabs
  readonly onLeave?: (listener: () => void) => () => void
  readonly persist?: () => Promise<boolean>
}

const mostTries = 5 // of a save while other tabs keep saving in between

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
  readonly #persist: () => Promise<boolean>
  readonly #parts: PartStore
  readonly #tabs: Tabs
  readonly #stopListening: () => void
  #stored: Stored = nothingStored
  #unheard: readonly Stored[] = [] // saves under way, or failed by report, that may yet be on the disk
  readonly #takenIn = new Set<string>() // keys of unsaved edits that the next save makes needless
  #copies: readonly Problem[] = []
  #loaded = false
  #holds = false // the right to write; the role follows when the workbook has been reloaded
  #role: KeeperFacts['role'] = 'reader'
  #saving = false
  #failure: 'refused' | 'full' | undefined
  #asked = false // for persistence
  readonly #pace = new Pace(() => void this.flush())
  #typed: readonly TypedText[] = []
  #typedStored = this.#typed // as far as this tab has written it
  #turn: Promise<unknown> = Promise.resolve()

  constructor(options: KeeperOptions) {
    this.#onState = guarded(options.onState)
    this.#onWorkbook = guarded(options.onWorkbook ?? (() => {}))
    this.#prepare = options.prepare ?? (async () => {})
    this.#persist = options.persist ?? askToPersist
    this.#parts = options.parts ?? databaseParts(options.database)
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
    this.fresh =
      this.#failure === undefined && this.#stored.head === undefined && this.#stored.damagedHead === undefined
    this.#loaded = true
    this.#tell()
    if (this.#dirty) void this.flush()
  }

  get problems(): readonly Problem[] {
    return [...this.#stored.problems, ...this.#copies]
  }

  keep(workbook: Workbook): void {
    if (workbook === this.workbook) return
    this.workbook = workbook
    this.#askToPersist()
    this.#pace.soon()
    this.#tell()
  }

  async flush(): Promise<void> {
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
      this.#pace.ended()
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
        if (typed === this.#typedStored) return changes
        return { ...changes, puts: new Map(changes.puts).set(typedKey, typed) }
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
    this.#pace.ended()
    this.#tabs.saved()
    return 'ended'
  }

  #failed(error: unknown): void {
    if (error instanceof WrittenByNewer) this.#stored = { ...this.#stored, newer: true }
    else this.#failure = nameOf(error) === 'QuotaExceededError' ? 'full' : 'refused'
    console.warn(storageFault, error)
  }

  /** Takes in what is stored; edits not saved are merged with it. Resolves to whether storage could be read. */
  async #reload(): Promise<boolean> {
    let theirs: Stored
    try {
      theirs = readStored(await this.#parts.read(), this.#stored)
    } catch (error) {
      this.#failed(error)
      this.#tell()
      return false
    }
    await this.#prepare([...theirs.workbook.formulas, ...unsavedFormulas(theirs)])
    const { mark } = theirs.head ?? {}
    const known = mark === this.#stored.head?.mark && theirs.newer === this.#stored.newer
    const left = this.#holds ? [...theirs.unsaved].filter(([key]) => !this.#takenIn.has(key)) : []
    if (this.#loaded && known && left.length === 0) return true

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
    if (this.#dirty || emptied) mergeWith(merge(base.workbook, this.workbook, theirs.workbook))
    else this.workbook = theirs.workbook
    for (const [key, edits] of left) {
      const merged = takeIn(edits, theirs, this.workbook)
      if (!merged) continue // unreadable, or of a newer version: left where it is
      this.#takenIn.add(key)
      mergeWith(merged)
    }
    this.#stored = theirs
    if (!this.#dirty) this.#failure = undefined // of an earlier load

    const kept = copies.map(copy => storageProblem({ code: 'keptAsCopy', copy }))
    const news = kept.map((told): Problem => ({ ...told, where: {}, severity: 'warning' }))
    this.#copies = [...this.#copies, ...news]
    if (this.workbook !== before && this.#loaded) {
      this.#onWorkbook(this.workbook, loadLabels.changedElsewhere(kept.map(told => told.message)))
    }
    this.#tell()
    return true
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
      const removes = this.#dirty ? [...this.#takenIn] : []
      if (this.#dirty) {
        const key = unsavedKey(newId())
        puts.set(key, unsavedEdits(this.workbook, this.#stored, this.#unheard))
        this.#takenIn.add(key)
      }
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

const nameOf = (error: unknown): string | undefined => (error instanceof Error ? error.name : undefined)
