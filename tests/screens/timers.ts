import { benchOf } from '../../src/day/bench/bench-day'
import { setTimer } from '../../src/day/bench/bench-edits'
import type { Formula } from '../../src/dough/document/formula'
import { applyChanges, emptyWorkbook, type Workbook } from '../../src/dough/document/workbook'

/** A workbook with the bench of a formula, and timers there that were set so many minutes ago, each for so many. */
export function benchWithTimers(
  formula: Formula,
  timers: readonly (readonly [name: string, ago: number, minutes: number])[],
): Workbook {
  let workbook: Workbook = { ...emptyWorkbook, formulas: [formula] }
  for (const [name, ago, minutes] of timers) {
    const now = Date.now() / 60_000 - ago
    const bench = benchOf(workbook, formula.id, now, 'UTC')!
    const set = setTimer(workbook, { bench, now, planned: new Map() }, name, minutes)
    workbook = applyChanges(workbook, set.changes).workbook
  }
  return workbook
}
