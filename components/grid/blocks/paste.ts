import { largest } from '../../../src/dough/document/largest.js'
import { enterCells, type LineTyped } from '../../../src/dough/edits/fetched/many-cells.js'
import { afterPaint } from '../../base/after-paint.js'
import { say } from '../../base/events.js'
import { enterInCell } from '../editing/cell-edits.js'
import type { EditingContext } from '../editing/session.js'
import type { Held, Place } from './forms.js'
import { linesAfter, type PastePlan, planBlock, planFill } from './paste-edits.js'
import { pastedFrom } from './pasted.js'
import {
  editLabels,
  noPlaceToPaste,
  nothingToPaste,
  type PasteCount,
  pasteWords,
  pastingWords,
  tooLongToPaste,
  tooManyToPaste,
} from './words.js'

const slice = 50 // milliseconds of work between two paints
const everyMoment = 1000 // milliseconds between two sentences on how far it is

/** Puts what a clipboard held in a place, and says what became of it. */
export async function paste(held: Held, place: Place, { grid, dispatcher }: EditingContext): Promise<void> {
  const { extent, table, columns } = place
  if (Math.max(held.plain.length, held.html.length, held.own.length) > largest.characters)
    return say(grid, tooLongToPaste(largest.characters))
  const pasted = await pastedFrom(held, grid.numbers)
  if (!pasted || pasted.rows.length === 0) return say(grid, nothingToPaste)
  const row = extent.rows[0]
  const column = extent.columns[0]
  if (!row || !column) return
  const single = pasted.rows.length === 1 && pasted.rows[0]?.length === 1
  const { formula } = grid.sheet
  if (row.kind === 'stage' && single) {
    dispatcher.editHere(enterInCell(formula.id, row, 'ingredient', pasted.rows[0]![0]!.text, '.', ''))
    return
  }
  if (row.kind === 'stage' || row.kind === 'sum') return say(grid, noPlaceToPaste)
  const many = extent.rows.length > 1 || extent.columns.length > 1
  const isFill = single && many
  const lines = isFill ? 0 : linesAfter(formula, table, row, pasted)
  if (lines > largest.lines) return say(grid, tooManyToPaste(lines, largest.lines))
  const count: PasteCount = { pasted: 0, notUnderstood: 0, leftOut: 0, refusals: [] }
  const plan = isFill
    ? planFill(formula, extent, pasted, count)
    : planBlock(formula, table, columns, { row, column }, pasted, count)
  const rows = isFill ? extent.rows.length : pasted.rows.length
  const typed = await inSlices(plan, done => say(grid, pastingWords(done, rows)))
  const refused = (sentence: string) => void count.refusals.push(sentence)
  const done = dispatcher.editHere(workbook =>
    enterCells(workbook, formula.id, typed, pasted.decimal, editLabels.paste, refused),
  )
  if (done) say(grid, pasteWords(count))
}

/** Works a plan out in slices, so that the page goes on meanwhile; `tell` is called now and then with the rows done. */
async function inSlices(plan: PastePlan, tell: (done: number) => void): Promise<readonly LineTyped[]> {
  let told = performance.now()
  let end = told + slice
  for (;;) {
    const step = plan.next()
    if (step.done) return step.value
    const now = performance.now()
    if (now < end) continue
    if (now - told > everyMoment) {
      told = now
      tell(step.value)
    }
    await afterPaint()
    end = performance.now() + slice
  }
}
