import { say } from '../../base/events.js'
import { enterInCell } from '../editing/cell-edits.js'
import type { EditingContext } from '../editing/session.js'
import type { Held, Place } from './forms.js'
import { fillBlock, pasteBlock } from './paste-edits.js'
import { pastedFrom } from './pasted.js'
import { noPlaceToPaste, nothingToPaste, type PasteCount, pasteWords } from './words.js'

/** Puts what a clipboard held in a place, and says what became of it. */
export async function paste(held: Held, place: Place, { grid, dispatcher }: EditingContext): Promise<void> {
  const { extent, table, columns } = place
  const pasted = await pastedFrom(held, grid.numbers)
  if (!pasted || pasted.rows.length === 0) return say(grid, nothingToPaste)
  const row = extent.rows[0]
  const column = extent.columns[0]
  if (!row || !column) return
  const single = pasted.rows.length === 1 && pasted.rows[0]?.length === 1
  const formula = grid.sheet.formula.id
  if (row.kind === 'stage' && single) {
    dispatcher.editHere(enterInCell(formula, row, 'ingredient', pasted.rows[0]![0]!.text, '.', ''))
    return
  }
  if (row.kind === 'stage' || row.kind === 'sum') return say(grid, noPlaceToPaste)
  const count: PasteCount = { pasted: 0, notUnderstood: 0, leftOut: 0, refusals: [] }
  const many = extent.rows.length > 1 || extent.columns.length > 1
  const edit =
    single && many
      ? fillBlock(formula, extent, pasted, count)
      : pasteBlock(formula, table, columns, { row, column }, pasted, count)
  if (dispatcher.editHere(edit)) say(grid, pasteWords(count))
}
