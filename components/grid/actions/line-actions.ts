import { sameName } from '../../../src/dough/document/formula.js'
import { holdWords } from '../../../src/dough/document/words.js'
import { markBase, moveLine, releaseHold, removeLines } from '../../../src/dough/edits/edits.js'
import { homeOf, type LineRow } from '../table/table.js'
import type { Action, Actor } from './action.js'

/** What can be done with a line, and what can be asked of it. */
export function lineActions(row: LineRow, actor: Actor, asked: readonly Action[]): readonly Action[] {
  const { formula } = actor
  const at = { formula: formula.id, stage: row.stage, line: row.key }
  const { ingredient, base } = row.line
  const actions: Action[] = [...releasing(row, actor), ...moving(row, actor)]
  actions.push(
    { label: 'Add a line above', run: () => actor.addLine(row, 0) },
    { label: 'Add a line below', keys: 'Ctrl+Enter', run: () => actor.addLine(row, 1) },
    {
      label: row.line.note ? 'Change the note' : 'Add a note',
      run: () => actor.startEditing(row.key, 'note'),
    },
    ...typingElsewhere(row, actor),
  )
  if (row.flourless)
    actions.push({
      label: base ? 'No longer mark as base' : 'Mark as base',
      run: () => actor.act(wb => markBase(wb, at, !base), row.key),
    })
  if (row.figures.is === 'starter')
    actions.push({
      label: 'Change to another starter, dough unchanged…',
      run: () => actor.offer(`Another starter for ${ingredient}`, starters(row, actor)),
    })
  if (ingredient && row.figures.is !== 'stage')
    actions.push({ label: 'Define in the larder…', run: () => actor.define(ingredient) })
  actions.push(...asked)
  if (actor.hasClipboard)
    actions.push(
      { label: 'Copy', keys: 'Ctrl+C', run: () => actor.copy(), apart: true },
      { label: 'Paste', keys: 'Ctrl+V', run: () => actor.paste() },
    )
  actions.push({ label: 'Remove', run: () => actor.act(wb => removeLines(wb, [at])), apart: true })
  return actions
}

function releasing(row: LineRow, actor: Actor): readonly Action[] {
  const { gives } = row.figures
  if (!gives) return []
  const label = `Release ${holdWords(gives, row.line.ingredient)}`
  const release = () => actor.act(wb => releaseHold(wb, actor.formula.id, h => h.line === row.key), row.key)
  return [{ label, run: release }]
}

function moving(row: LineRow, actor: Actor): readonly Action[] {
  const { formula } = actor
  const at = { formula: formula.id, stage: row.stage, line: row.key }
  const place = formula.stages.findIndex(s => s.id === row.stage)
  const lines = formula.stages[place]?.lines ?? []
  const isFirst = place === 0 && lines[0]?.id === row.key
  const isLast = place === formula.stages.length - 1 && lines[lines.length - 1]?.id === row.key
  const move = (by: -1 | 1) => () => actor.act(wb => moveLine(wb, at, by), row.key)
  return [
    ...(isFirst ? [] : [{ label: 'Move up', keys: 'Alt+↑', run: move(-1), apart: true as const }]),
    ...(isLast
      ? []
      : [{ label: 'Move down', keys: 'Alt+↓', run: move(1), ...(isFirst ? { apart: true as const } : {}) }]),
  ]
}

/** What is typed in columns for which there is no room here. */
function typingElsewhere(row: LineRow, actor: Actor): readonly Action[] {
  const { columns } = actor
  const away = (column: 'weight' | 'wholeDough') => homeOf(column, columns) !== column
  const actions: Action[] = []
  if (away('weight'))
    actions.push({ label: 'Set the grams', run: () => actor.startEditing(row.key, 'weight') })
  if (away('wholeDough') && row.isFinal)
    actions.push({
      label: 'Set its share of the whole dough',
      run: () => actor.startEditing(row.key, 'wholeDough'),
    })
  return actions
}

/** The larder's other starters, each to be taken in the line's place. The edit is fetched when one is chosen. */
function starters(row: LineRow, actor: Actor): readonly Action[] {
  const { sheet } = actor
  const at = { formula: sheet.formula.id, stage: row.stage, line: row.key }
  return sheet.larder.ingredients
    .filter(i => i.countsAs.kind === 'starter' && !sameName(i.name, row.line.ingredient))
    .map(({ name }) => ({
      label: name,
      run: async () => {
        const { changeStarter } = await import('../../../src/dough/edits/rebase.js')
        actor.act(() => changeStarter(sheet, at, name), row.key)
      },
    }))
}
