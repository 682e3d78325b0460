import { offersOf } from '../offers/tb-offers.js'
import type { Column, LineRow, Row } from '../table/table.js'
import { lineActions } from './line-actions.js'
import type { Action } from './menu.js'
import type { MenuCommands } from './menu-commands.js'
import { askLabel, askStageLabel } from './menu-words.js'
import { questionAt } from './questions.js'
import { stageActions } from './stage-actions.js'

/** The menu of a row, opened at one of its cells. */
export function actionsFor(row: Row, column: Column, commands: MenuCommands): readonly Action[] {
  const asked = asking(row, column, commands)
  if (row.kind === 'line') return [...offered(row, commands), ...lineActions(row, commands, asked)]
  return row.kind === 'stage' ? stageActions(row, commands, asked) : []
}

/** What can be done at once about the line. */
const offered = (row: LineRow, commands: MenuCommands): readonly Action[] =>
  offersOf(commands, row.key).flatMap(({ offers }) =>
    offers.map(({ label, edit }) => ({ label, run: () => commands.edit(edit, row.key) })),
  )

/** What is asked of the number at hand; where there is none, of the row's weight. */
function asking(row: Row, column: Column, commands: MenuCommands): readonly Action[] {
  const question = questionAt(row, column, commands.columns.includes('batch'))
  if (!question || (row.kind !== 'stage' && !/\d/.test(question.figure))) return []
  const label = row.kind === 'stage' ? askStageLabel(question.figure) : askLabel(question.figure)
  return [{ label, keys: 'Alt+Enter', run: () => commands.ask(question.cell), apart: true }]
}
