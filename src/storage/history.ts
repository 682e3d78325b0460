import { applyChanges, type Change, type Transaction, type Workbook } from '../dough/document/workbook.js'
import { guarded } from './guarded.js'
import type { Step, Steps } from './record/undo-steps.js'
import { loadLabels } from './words.js'

/** Told after every change of the workbook. `transaction` holds the changes as made: for undo, the inverse. */
export interface HistoryEvent<P = unknown> {
  readonly workbook: Workbook
  readonly before: Workbook // as it was before the change
  readonly transaction: Transaction
  readonly way: 'do' | 'undo' | 'redo' | 'load'
  readonly place?: P // where the edit was made, as its caller gave it
}

const mostSteps = 500

/**
 * The workbook as it stands and every edit that led there, as far back as 500 steps. The one place where a
 * workbook changes: undo, saving and announcements hang on `subscribe`.
 *
 * `P` is whatever the caller wants back when a step is undone or redone: the cell the baker was in.
 */
export class History<P = unknown> {
  #workbook: Workbook
  #done: readonly Step<P>[] = []
  #undone: readonly Step<P>[] = []
  readonly #listeners = new Set<(event: HistoryEvent<P>) => void>()
  readonly #events: HistoryEvent<P>[] = []

  constructor(workbook: Workbook) {
    this.#workbook = workbook
  }

  get workbook(): Workbook {
    return this.#workbook
  }

  /** What undo would take back, in words; undefined when there is nothing to undo. */
  get undoLabel(): string | undefined {
    return this.#done.at(-1)?.label
  }

  get redoLabel(): string | undefined {
    return this.#undone.at(-1)?.label
  }

  /**
   * Makes an edit and returns the workbook with it; nothing is redone after an edit. A transaction without changes is
   * no step. Throws RangeError, with nothing changed, when a place is gone.
   */
  apply(transaction: Transaction, place?: P): Workbook {
    if (transaction.changes.length === 0) return this.#workbook
    const { workbook, inverse } = applyChanges(this.#workbook, transaction.changes)
    const { label, changes, forgets } = transaction
    this.#done = forgets
      ? forgets(this.#done)
      : [...this.#done, { label, changes, inverse, place }].slice(-mostSteps)
    this.#undone = []
    this.#become(workbook, transaction, 'do', place)
    return workbook
  }

  /** Takes the last step back and returns its place; undefined, with nothing changed, when there is none. */
  undo(): { readonly workbook: Workbook; readonly place: P | undefined } | undefined {
    const step = this.#done.at(-1)
    const workbook = step && this.#made(step.inverse)
    if (!step || !workbook) return undefined
    this.#done = this.#done.slice(0, -1)
    this.#undone = [...this.#undone, step]
    this.#become(workbook, { label: step.label, changes: step.inverse }, 'undo', step.place)
    return { workbook, place: step.place }
  }

  redo(): { readonly workbook: Workbook; readonly place: P | undefined } | undefined {
    const step = this.#undone.at(-1)
    const workbook = step && this.#made(step.changes)
    if (!step || !workbook) return undefined
    this.#undone = this.#undone.slice(0, -1)
    this.#done = [...this.#done, step]
    this.#become(workbook, { label: step.label, changes: step.changes }, 'redo', step.place)
    return { workbook, place: step.place }
  }

  get steps(): Steps<P> {
    return { done: this.#done, undone: this.#undone }
  }

  /** Takes up where an earlier page was with this same workbook; does nothing once an edit was made. */
  takeUp({ done, undone }: Steps<P>): void {
    if (this.#done.length > 0 || this.#undone.length > 0) return
    this.#done = done
    this.#undone = undone
  }

  /** The workbook after these changes; undefined, and nothing is undone any more, where they are of another one. */
  #made(changes: readonly Change[]): Workbook | undefined {
    try {
      return applyChanges(this.#workbook, changes).workbook
    } catch (error) {
      if (!(error instanceof RangeError)) throw error
      this.#done = []
      this.#undone = []
      return undefined
    }
  }

  /** Begins again with a workbook that came from elsewhere: from storage, from another tab. */
  load(workbook: Workbook, label: string = loadLabels.open): void {
    this.#done = []
    this.#undone = []
    this.#become(workbook, { label, changes: [] }, 'load', undefined)
  }

  /** Calls `listener` after every change, in the order of the changes. Returns what ends it. */
  subscribe(listener: (event: HistoryEvent<P>) => void): () => void {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  #become(
    workbook: Workbook,
    transaction: Transaction,
    way: HistoryEvent['way'],
    place: P | undefined,
  ): void {
    const before = this.#workbook
    this.#workbook = workbook
    this.#events.push({ workbook, before, transaction, way, ...(place === undefined ? {} : { place }) })
    // A listener may edit: the others still hear of both edits in their order.
    if (this.#events.length > 1) return
    for (let event = this.#events[0]; event; event = this.#events[0]) {
      // The edit stands whatever a listener makes of it.
      for (const listener of [...this.#listeners]) guarded(listener)(event)
      this.#events.shift()
    }
  }
}
