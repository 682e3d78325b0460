import { sameName } from '../../../src/dough/document/formula.js'
import { addStage, moveStage, newStage, removeStage, setFerments } from '../../../src/dough/edits/edits.js'
import { type StageRow, stageKey } from '../table/table.js'
import type { Action, Actor } from './action.js'

/** What can be done with a stage, and what can be asked of it. */
export function stageActions(row: StageRow, actor: Actor, asked: readonly Action[]): readonly Action[] {
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
  if (stage.lines.some(l => l.amount !== '')) actions.push(...writing(row, actor))
  actions.push(...asked)
  actions.push({ label: 'Add a stage before', run: () => addStageAt(actor, place), apart: true })
  if (formula.stages.length > 1)
    actions.push({ label: 'Remove stage', run: () => actor.act(wb => removeStage(wb, at)) })
  return actions
}

/** The ways to write the stage anew; the edits are fetched when one is chosen. */
function writing({ key, stage }: StageRow, actor: Actor): readonly Action[] {
  const { sheet } = actor
  const write = (way: 'writeInGrams' | 'writeInPercentages') => async () => {
    const edits = await import('../../../src/dough/edits/rebase.js')
    actor.act(() => edits[way](sheet, stage.id), key)
  }
  return [
    { label: 'Write this stage in grams', run: write('writeInGrams'), apart: true },
    { label: 'Write this stage in percentages', run: write('writeInPercentages') },
  ]
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
