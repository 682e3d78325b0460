import { enterInCell } from '../editing/cell-edits.js'
import type { Extent } from '../moving/steps.js'
import type { Column, Table } from '../table/table.js'
import type { Held } from './forms.js'
import type { BlocksHost } from './host.js'
import { fillBlock, type PasteCount, pasteBlock } from './paste-edits.js'
import { pastedFrom } from './pasted.js'

/** Where the baker was when it was pasted. */
interface Place {
  readonly extent: Extent
  readonly table: Table
  readonly columns: readonly Column[]
}

/** Puts what a clipboard held in a place, and says what became of it. */
export async function paste(held: Held, { extent, table, columns }: Place, host: BlocksHost): Promise<void> {
  const pasted = await pastedFrom(held, host.given.numbers)
  if (!pasted || pasted.rows.length === 0) {
    host.say('There is no text to paste.')
    return
  }
  const row = extent.rows[0]
  const column = extent.columns[0]
  if (!row || !column) return
  const single = pasted.rows.length === 1 && pasted.rows[0]?.length === 1
  const formula = host.given.sheet.formula.id
  if (row.kind === 'stage' && single) {
    host.act(enterInCell(formula, row, 'ingredient', pasted.rows[0]![0]!.text, '.', ''))
    return
  }
  if (row.kind === 'stage' || row.kind === 'sum') {
    host.say('Paste on a line, or on “Add an ingredient”.')
    return
  }
  const count: PasteCount = { pasted: 0, notUnderstood: 0, leftOut: 0, refusals: [] }
  const many = extent.rows.length > 1 || extent.columns.length > 1
  const edit =
    single && many
      ? fillBlock(formula, extent, pasted, count)
      : pasteBlock(formula, table, columns, { row, column }, pasted, count)
  if (host.act(edit)) host.say(pasteSentence(count))
}

function pasteSentence(count: PasteCount): string {
  const { pasted, notUnderstood, leftOut, refusals } = count
  if (pasted + notUnderstood + refusals.length === 0)
    return leftOut
      ? 'There is no room for this here.'
      : 'These cells follow from the others and take nothing.'
  const parts = [`${Math.max(0, pasted - refusals.length)} pasted`]
  if (notUnderstood) parts.push(`${notUnderstood} not understood`)
  if (leftOut) parts.push(`${leftOut} left out, past the last column`)
  return [`${parts.join(', ')}.`, ...refusals].join(' ')
}
