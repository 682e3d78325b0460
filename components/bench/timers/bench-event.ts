import type { AtBench } from '../../../src/day/bench/bench-edits.js'
import type { Transaction, Workbook } from '../../../src/dough/document/workbook.js'

/** An edit at the bench: the bench gives it where and when. */
export type BenchEdit = (workbook: Workbook, where: AtBench) => Transaction | undefined

/** Asks the bench to make an edit. */
export function atBench(from: EventTarget, edit: BenchEdit): void {
  from.dispatchEvent(new CustomEvent('tb-at-bench', { detail: edit, bubbles: true, composed: true }))
}
