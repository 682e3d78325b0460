import type { AtBench } from '../../../src/day/bench/bench-edits.js'
import type { Todo } from '../../../src/day/bench/todos.js'
import type { Transaction, Workbook } from '../../../src/dough/document/workbook.js'

/** An edit at the bench: the bench gives it where and when. */
export type BenchEdit = (workbook: Workbook, where: AtBench) => Transaction | undefined

/** What a part asks of the bench. */
export interface AskedOfBench {
  readonly edit: BenchEdit
  readonly begins: Todo | undefined // the work that begins with it
}

/** Asks the bench to make an edit; with the thing to do that begins with it, where one does. */
export function atBench(from: EventTarget, edit: BenchEdit, begins?: Todo): void {
  from.dispatchEvent(
    new CustomEvent('tb-at-bench', {
      detail: { edit, begins } satisfies AskedOfBench,
      bubbles: true,
      composed: true,
    }),
  )
}
