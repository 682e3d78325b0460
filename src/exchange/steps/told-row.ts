import type { Step } from '../../dough/document/formula.js'

/** What a row of a recipe is known to be, before it is read: it comes from a page’s data, which says so. */
export interface ToldRow {
  readonly is: 'title' | 'stage' | 'list' | 'method' | 'step' | 'note' | 'fact'
  readonly name?: string // of a title or a stage
  readonly stage?: string // the stage that a step is of, by name
  readonly minutes?: number // that are stated beside the words of a step
  readonly step?: Omit<Step, 'id'> // where the row is one that Tarebook wrote
  readonly baking?: number // minutes that the whole recipe bakes, of a fact
}

/** A recipe in rows, with what is known of some of them, by their number from 1. */
export interface ToldText {
  readonly text: string
  readonly told: ReadonlyMap<number, ToldRow>
}
