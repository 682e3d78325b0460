import { keepAsBuild, letBuildGo } from '../../../src/dough/edits/builds/build-edits.js'
import { moveStage } from '../../../src/dough/edits/edits.js'
import { removeStage, setFerments } from '../../../src/dough/edits/fetched/row-edits.js'
import type { StageRow } from '../table/table.js'
import type { Action } from './menu.js'
import type { MenuCommands } from './menu-commands.js'
import { labels } from './menu-words.js'

/** What can be done with a stage, and what can be asked of it. */
export function stageActions(
  row: StageRow,
  commands: MenuCommands,
  asked: readonly Action[],
): readonly Action[] {
  const { formula } = commands
  const { stage } = row
  const at = { formula: formula.id, stage: stage.id }
  const place = formula.stages.findIndex(s => s.id === stage.id)
  const actions: Action[] = [
    { label: labels.rename, keys: 'F2', run: () => commands.startEditing(row.key, 'ingredient') },
  ]
  if (place > 0)
    actions.push({
      label: labels.moveEarlier,
      keys: 'Alt+↑',
      run: () => commands.edit(wb => moveStage(wb, at, -1), row.key),
    })
  if (place < formula.stages.length - 1)
    actions.push({
      label: labels.moveLater,
      keys: 'Alt+↓',
      run: () => commands.edit(wb => moveStage(wb, at, 1), row.key),
    })
  const ways = [
    [labels.ferments, true],
    [labels.doesNotFerment, false],
    [labels.linesDecide, undefined],
  ] as const
  for (const [label, ferments] of ways)
    actions.push({
      label,
      checked: stage.ferments === ferments,
      run: () => commands.edit(wb => setFerments(wb, at, ferments), row.key),
      ...(ferments ? { apart: true } : {}),
    })
  if (stage.lines.some(l => l.amount !== '')) actions.push(...writing(row, commands))
  actions.push(
    {
      label: stage.method?.length ? labels.goToMethod : labels.addMethod,
      run: () => commands.toMethod(stage.id),
      apart: true,
    },
    stage.build
      ? { label: labels.letBuildGo, run: () => commands.edit(wb => letBuildGo(wb, at), row.key) }
      : { label: labels.keepAsBuild, run: () => commands.edit(wb => keepAsBuild(wb, at), row.key) },
    ...asked,
  )
  actions.push({ label: labels.addStageBefore, run: () => commands.addStage(place), apart: true })
  if (formula.stages.length > 1)
    actions.push({ label: labels.removeStage, run: () => commands.edit(wb => removeStage(wb, at)) })
  return actions
}

/** The ways to write the stage anew; the edits are fetched when one is chosen. */
function writing({ key, stage }: StageRow, commands: MenuCommands): readonly Action[] {
  const { sheet } = commands
  const write = (way: 'writeInGrams' | 'writeInPercentages') => async () => {
    const edits = await import('../../../src/dough/edits/fetched/rebase.js')
    commands.edit(() => edits[way](sheet, stage.id), key)
  }
  return [
    { label: labels.inGrams, run: write('writeInGrams'), apart: true },
    { label: labels.inPercentages, run: write('writeInPercentages') },
  ]
}
