import type { Formula } from '../../src/dough/document/formula.js'
import { Refusal } from '../../src/dough/edits/edits.js'
import {
  type Keeper,
  type KeeperNews,
  type KeeperState,
  openKeeper,
  type TypedText,
} from '../../src/storage/index.js'
import type * as StoredSteps from '../../src/storage/record/stored-steps.js'
import type { Steps } from '../../src/storage/record/undo-steps.js'
import type { EditRequest } from '../base/events.js'
import { fetchFor } from '../base/fetched-for.js'
import type { NumberStyle } from '../base/numbers.js'
import { Desk, type DeskEvent, type DeskPlace, type EditPlace } from './desk.js'
import { rememberHere, type WasHere, wasHere } from './was-here.js'
import { deskWords } from './words.js'

/** The workbook that a first start opens with. */
export interface Examples {
  readonly workbook: string // its name
  readonly formulas: readonly Formula[]
}

/** What a start needs to know. */
export interface Start {
  readonly database: string // name in the browser's storage
  readonly numbers: NumberStyle
  readonly loadExamples: () => Promise<Examples>
  readonly open: string // id of the formula to open; the first one where there is none of it
}

/** What is told of the kept desk. */
export interface KeptDeskEvents {
  readonly changed: (event: DeskEvent) => void // the workbook, by an edit, by undo, or in another tab
  readonly refreshed: () => void // what is kept
  readonly readings: () => void // of the shelf, that came later
}

/** The desk with what keeps it: loaded from the browser's storage, every change handed on to it. */
export class KeptDesk {
  desk: Desk | undefined // undefined until the workbook is loaded
  state: KeeperState = { status: 'loading' }
  database = ''
  examples: readonly Formula[] = []
  fresh = false // the workbook was made of the examples just now
  gone: WasHere | undefined // there was a workbook here, and the browser has none any more
  unread: string | undefined // why nothing is known of what is stored
  #keeper: Keeper | undefined
  #storedSteps: typeof StoredSteps | undefined // fetched when the page is idle

  constructor(private readonly tell: KeptDeskEvents) {}

  get readOnly(): boolean {
    return this.state.status === 'read-only'
  }

  /** What storage could not make sense of. */
  get problems(): readonly KeeperNews[] {
    return this.#keeper?.problems ?? []
  }

  /** Loads the workbook, or on a first start the examples, and opens a formula of it. */
  async start({ database, numbers, loadExamples, open }: Start): Promise<void> {
    this.database = database
    const keeper = await openKeeper({
      database,
      onState: state => {
        this.state = state
        this.#remember(database)
        this.tell.refreshed()
      },
      prepare: fetchFor,
      stepsToKeep: () => this.desk && this.#storedSteps?.stepsToKeep(this.desk.history.steps),
      onWorkbook: (workbook, why) => this.desk?.history.load(workbook, why),
    })
    this.#keeper = keeper
    if (keeper.fresh) this.gone = wasHere(database)
    if (keeper.unread && 'reason' in keeper.state) this.unread = keeper.state.reason.message
    const examples = keeper.fresh ? await loadExamples() : undefined
    const workbook = examples
      ? { name: examples.workbook, formulas: examples.formulas, larder: [] }
      : keeper.workbook
    await fetchFor(workbook.formulas)
    const first = open || (keeper.left.at(-1)?.formula ?? '')
    this.desk = new Desk(workbook, numbers, event => this.#changed(event), this.tell.readings, first)
    this.fresh = examples !== undefined && examples.formulas.length > 0
    this.tell.refreshed()
    this.examples = (examples ?? (await loadExamples())).formulas
    this.tell.refreshed()
  }

  #changed(event: DeskEvent): void {
    if (event.event.way !== 'load') this.#keeper?.keep(event.event.workbook)
    this.tell.changed(event)
  }

  #remember(database: string): void {
    const { state } = this
    if (state.status !== 'saved' || !state.at || !this.#keeper) return
    this.unread = undefined
    const { formulas } = this.#keeper.workbook
    rememberHere(database, { savedAt: state.at.toISOString(), formulas: formulas.length })
  }

  /** Makes the edit asked for, or says in the request why not. */
  edit(request: EditRequest): void {
    const { desk } = this
    if (!desk) return
    if (this.state.status === 'read-only') {
      request.refusal = this.state.reason.message
      return
    }
    try {
      const transaction = request.edit(desk.workbook)
      // Only the grid and the days give a place.
      if (transaction) desk.edit(transaction, request.place as EditPlace | undefined)
    } catch (error) {
      if (error instanceof Refusal) request.refusal = error.message
      else if (error instanceof RangeError) request.refusal = deskWords.gone
      else throw error
    }
  }

  /** Undoes or does again; the place where the edit was made, its formula open. */
  step(way: 'undo' | 'redo'): DeskPlace | undefined {
    const { desk } = this
    if (!desk || this.readOnly) return undefined
    const done = desk.history[way]()
    if (done?.place) desk.open(done.place.formula)
    return done?.place
  }

  /** What was left in fields when the page went away. */
  get left(): readonly TypedText[] {
    return this.#keeper?.left ?? []
  }

  /** Has what is being typed kept too. */
  type(texts: readonly TypedText[]): void {
    // The examples of a first start are not stored before something is done to them.
    if (texts.length > 0 && this.desk && !this.readOnly) this.#keeper?.keep(this.desk.workbook)
    this.#keeper?.type(texts)
  }

  /** Whether closing the page now may lose something. */
  get atRisk(): boolean {
    return this.#keeper?.atRisk ?? false
  }

  /** What is stored and could not be read, by its key and as it is. */
  damaged = async (): Promise<ReadonlyMap<string, unknown>> => (await this.#keeper?.damaged()) ?? new Map()

  /** Fetches what keeping needs only later. */
  fetchRest = async (): Promise<void> => {
    const [stored] = await Promise.all([
      import('../../src/storage/record/stored-steps.js'),
      import('./said.js'),
      this.#keeper?.fetchRest(),
    ])
    this.#storedSteps = stored
    const steps = stored.readSteps(this.#keeper?.steps)
    if (steps && this.desk?.workbook === this.#keeper?.workbook)
      this.desk?.history.takeUp(steps as Steps<DeskPlace>)
    this.tell.refreshed()
  }

  takeOver = (): void => void this.#keeper?.takeOver()
  tryAgain = (): void => void this.#keeper?.flush()
  close = (): void => void this.#keeper?.close()
}
