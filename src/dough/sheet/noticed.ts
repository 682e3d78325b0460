import type { CellError, Worded } from '../../engine/index.js'
import type { Problem } from '../document/formula.js'
import type { LinePlan } from '../outline/outline.js'

/** What was noticed in a formula when somebody asked, kept until it is to be forgotten. */
export class Noticed {
  readonly ofLines = new Map<LinePlan, readonly Problem[]>()
  ofMeanings: readonly Problem[] | undefined
  all: readonly Problem[] | undefined
  reasons = new WeakMap<CellError, Worded>() // each in words: one for all cells that have it

  /** To be called with the lines that are touched. */
  forget(lines: Iterable<LinePlan>): void {
    this.all = undefined
    this.reasons = new WeakMap()
    for (const line of lines) this.ofLines.delete(line)
  }
}
