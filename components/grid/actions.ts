import {
  addStage,
  markBase,
  moveLine,
  moveStage,
  newStage,
  removeLines,
  removeStage,
  setFerments,
} from '../../src/dough/edits.js'
import { type Formula, sameName } from '../../src/dough/formula.js'
import type { Edit } from '../events.js'
import { type Column, type LineRow, type Row, type StageRow, stageKey } from './table.js'

/** One entry of a row's menu. */
export interface Action {
  readonly label: string
  readonly run: () => void
  readonly keys?: string // that do the same
  readonly checked?: boolean // one of several ways, and whether it is this one
  readonly apart?: true // a rule before it
}

/** What the actions ask of the grid. */
export interface Actor {
  readonly formula: Formula
  readonly hasClipboard: boolean
  /** Makes the edit and goes to the row; says why if it cannot be. */
  act(edit: Edit, goTo?: string): boolean
  addLine(row: LineRow, by: 0 | 1): void
  startEditing(row: string, column: Column): void
  define(ingredient: string): void
  copy(): void
  paste(): void
}

export function actionsFor(row: Row, actor: Actor): readonly Action[] {
  if (row.kind === 'line') return lineActions(row, actor)
  return row.kind === 'stage' ? stageActions(row, actor) : []
}

function lineActions(row: LineRow, actor: Actor): readonly Action[] {
  const { formula } = actor
  const at = { formula: formula.id, stage: row.stage, line: row.key }
  const place = formula.stages.findIndex(s => s.id === row.stage)
  const lines = formula.stages[place]?.lines ?? []
  const isFirst = place === 0 && lines[0]?.id === row.key
  const isLast = place === formula.stages.length - 1 && lines[lines.length - 1]?.id === row.key
  const { ingredient, base } = row.line
  const actions: Action[] = []
  if (!isFirst)
    actions.push({
      label: 'Move up',
      keys: 'Alt+↑',
      run: () => actor.act(wb => moveLine(wb, at, -1), row.key),
    })
  if (!isLast)
    actions.push({
      label: 'Move down',
      keys: 'Alt+↓',
      run: () => actor.act(wb => moveLine(wb, at, 1), row.key),
    })
  actions.push(
    { label: 'Add a line above', run: () => actor.addLine(row, 0) },
    { label: 'Add a line below', keys: 'Ctrl+Enter', run: () => actor.addLine(row, 1) },
    {
      label: row.line.note ? 'Change the note' : 'Add a note',
      run: () => actor.startEditing(row.key, 'note'),
    },
  )
  if (row.flourless)
    actions.push({
      label: base ? 'No longer mark as base' : 'Mark as base',
      run: () => actor.act(wb => markBase(wb, at, !base), row.key),
    })
  if (ingredient && row.figures.is !== 'stage')
    actions.push({ label: 'Define in the larder…', run: () => actor.define(ingredient) })
  if (actor.hasClipboard)
    actions.push(
      { label: 'Copy', keys: 'Ctrl+C', run: () => actor.copy(), apart: true },
      { label: 'Paste', keys: 'Ctrl+V', run: () => actor.paste() },
    )
  actions.push({ label: 'Remove', run: () => actor.act(wb => removeLines(wb, [at])), apart: true })
  return actions
}

function stageActions(row: StageRow, actor: Actor): readonly Action[] {
  const { formula } = actor
  const { stage } = row
  const at = { formula: formula.id, stage: stage.id }
  const place = formula.stages.findIndex(s => s.id === stage.id)
  const actions: Action[] = [
    { label: 'Rename', keys: 'F2', run: () => actor.startEditing(row.key, 'ingredient') },
  ]
  if (place > 0)
    actions.push({
      label: 'Move earlier',
      keys: 'Alt+↑',
      run: () => actor.act(wb => moveStage(wb, at, -1), row.key),
    })
  if (place < formula.stages.length - 1)
    actions.push({
      label: 'Move later',
      keys: 'Alt+↓',
      run: () => actor.act(wb => moveStage(wb, at, 1), row.key),
    })
  const ways = [
    ['Ferments', true],
    ['Does not ferment', false],
    ['Let its lines decide whether it ferments', undefined],
  ] as const
  for (const [label, ferments] of ways)
    actions.push({
      label,
      checked: stage.ferments === ferments,
      run: () => actor.act(wb => setFerments(wb, at, ferments), row.key),
      ...(ferments ? { apart: true } : {}),
    })
  actions.push({ label: 'Add a stage before', run: () => addStageAt(actor, place), apart: true })
  if (formula.stages.length > 1)
    actions.push({ label: 'Remove stage', run: () => actor.act(wb => removeStage(wb, at)) })
  return actions
}

/** Adds a stage, before the final dough or at `index`, and lets the baker name it. */
export function addStageAt(actor: Actor, index?: number): void {
  const taken = (name: string) => actor.formula.stages.some(s => sameName(s.name, name))
  let name = 'New stage'
  for (let n = 2; taken(name); n++) name = `New stage ${n}`
  const stage = newStage(name)
  actor.act(wb => addStage(wb, actor.formula.id, stage, index))
  actor.startEditing(stageKey(stage.id), 'ingredient')
}
