import { methodFollowing } from '../document/step-names.js'
import { applyChanges, type Change, type Transaction, type Workbook } from '../document/workbook.js'
import { formulaIn } from './edit-places.js'
import { labels } from './words.js'

/**
 * An edit of lines, and what their stages' methods become by it: steps add the lines that they added, as they are called
 * then; at which steps one is added no more, the label says.
 */
export function withSteps(workbook: Workbook, formula: string, edit: Transaction): Transaction {
  const { stages } = formulaIn(workbook, formula)
  if (!stages.some(({ method }) => method)) return edit
  const { label, changes } = edit
  const left: string[] = []
  const others = formulaIn(applyChanges(workbook, changes).workbook, formula).stages.flatMap(
    (value): Change[] => {
      const before = stages.find(({ id }) => id === value.id)
      if (!before?.method || before.lines === value.lines) return []
      const following = methodFollowing(before, value.lines)
      left.push(...following.left.map(({ does }) => does))
      const { method } = following
      return method === before.method
        ? []
        : [{ of: 'stage', formula, id: value.id, value: { ...value, method } }]
    },
  )
  return { label: labels.noLongerAdded(label, left), changes: [...changes, ...others] }
}
