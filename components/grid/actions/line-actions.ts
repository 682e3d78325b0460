import { sameName } from '../../../src/dough/document/formula.js'
import { moveLine, releaseHold } from '../../../src/dough/edits/edits.js'
import { markBase, removeLines } from '../../../src/dough/edits/fetched/row-edits.js'
import { homeOf, type LineRow } from '../table/table.js'
import type { Action } from './menu.js'
import type { MenuCommands } from './menu-commands.js'
import { labels, releaseLabel, startersName } from './menu-words.js'

/** What can be done with a line, and what can be asked of it. */
export function lineActions(
  row: LineRow,
  commands: MenuCommands,
  asked: readonly Action[],
): readonly Action[] {
  const { formula } = commands
  const at = { formula: formula.id, stage: row.stage, line: row.key }
  const { ingredient, base } = row.line
  const actions: Action[] = [...releasing(row, commands), ...moving(row, commands)]
  actions.push(
    { label: labels.addAbove, run: () => commands.addLine(row, 0) },
    { label: labels.addBelow, keys: 'Ctrl+Enter', run: () => commands.addLine(row, 1) },
    {
      label: row.line.note ? labels.changeNote : labels.addNote,
      run: () => commands.startEditing(row.key, 'note'),
    },
    ...typingElsewhere(row, commands),
  )
  if (row.flourless)
    actions.push({
      label: base ? labels.unmarkBase : labels.markBase,
      run: () => commands.edit(wb => markBase(wb, at, !base), row.key),
    })
  if (row.figures.is === 'starter')
    actions.push({
      label: labels.changeStarter,
      run: () => commands.offer(startersName(ingredient), starters(row, commands)),
    })
  if (ingredient && row.figures.is !== 'stage')
    actions.push({ label: labels.define, run: () => commands.define(ingredient) })
  actions.push(...asked)
  if (commands.hasClipboard)
    actions.push(
      { label: labels.copy, keys: 'Ctrl+C', run: () => commands.copy(), apart: true },
      { label: labels.paste, keys: 'Ctrl+V', run: () => commands.paste() },
    )
  actions.push({ label: labels.remove, run: () => commands.edit(wb => removeLines(wb, [at])), apart: true })
  return actions
}

function releasing(row: LineRow, commands: MenuCommands): readonly Action[] {
  const { gives } = row.figures
  if (!gives) return []
  const label = releaseLabel(gives, row.line.ingredient)
  const release = () =>
    commands.edit(wb => releaseHold(wb, commands.formula.id, h => h.line === row.key), row.key)
  return [{ label, run: release }]
}

function moving(row: LineRow, commands: MenuCommands): readonly Action[] {
  const { formula } = commands
  const at = { formula: formula.id, stage: row.stage, line: row.key }
  const place = formula.stages.findIndex(s => s.id === row.stage)
  const lines = formula.stages[place]?.lines ?? []
  const isFirst = place === 0 && lines[0]?.id === row.key
  const isLast = place === formula.stages.length - 1 && lines[lines.length - 1]?.id === row.key
  const move = (by: -1 | 1) => () => commands.edit(wb => moveLine(wb, at, by), row.key)
  return [
    ...(isFirst ? [] : [{ label: labels.moveUp, keys: 'Alt+↑', run: move(-1), apart: true as const }]),
    ...(isLast
      ? []
      : [
          {
            label: labels.moveDown,
            keys: 'Alt+↓',
            run: move(1),
            ...(isFirst ? { apart: true as const } : {}),
          },
        ]),
  ]
}

/** What is typed in columns for which there is no room here. */
function typingElsewhere(row: LineRow, commands: MenuCommands): readonly Action[] {
  const { columns } = commands
  const away = (column: 'weight' | 'wholeDough') => homeOf(column, columns) !== column
  const actions: Action[] = []
  if (away('weight'))
    actions.push({ label: labels.setGrams, run: () => commands.startEditing(row.key, 'weight') })
  if (away('wholeDough') && row.isFinal)
    actions.push({
      label: labels.setShare,
      run: () => commands.startEditing(row.key, 'wholeDough'),
    })
  return actions
}

/** The larder's other starters, each to be taken in the line's place. The edit is fetched when one is chosen. */
function starters(row: LineRow, commands: MenuCommands): readonly Action[] {
  const { sheet } = commands
  const at = { formula: sheet.formula.id, stage: row.stage, line: row.key }
  return sheet.larder.ingredients
    .filter(i => i.countsAs.kind === 'starter' && !sameName(i.name, row.line.ingredient))
    .map(({ name }) => ({
      label: name,
      run: async () => {
        const { changeStarter } = await import('../../../src/dough/edits/fetched/rebase.js')
        commands.edit(() => changeStarter(sheet, at, name), row.key)
      },
    }))
}
