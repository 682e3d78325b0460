import type { Column, Row } from '../table/table.js'
import type { Action, Actor } from './action.js'
import { lineActions } from './line-actions.js'
import { questionAt } from './questions.js'
import { stageActions } from './stage-actions.js'

/** The menu of a row, opened at one of its cells. */
export function actionsFor(row: Row, column: Column, actor: Actor): readonly Action[] {
  const asked = asking(row, column, actor)
  if (row.kind === 'line') return lineActions(row, actor, asked)
  return row.kind === 'stage' ? stageActions(row, actor, asked) : []
}

/** What is asked of the number at hand; where there is none, of the row's weight. */
function asking(row: Row, column: Column, actor: Actor): readonly Action[] {
  const question = questionAt(row, column, actor.columns.includes('batch'))
  if (!question || (row.kind !== 'stage' && !/\d/.test(question.figure))) return []
  const what = row.kind === 'stage' ? `the weight of ${question.figure}` : question.figure
  const label = `How is ${what} worked out?`
  return [{ label, keys: 'Alt+Enter', run: () => actor.ask(question.cell), apart: true }]
}
