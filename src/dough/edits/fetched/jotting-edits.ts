import { jottingNameAsKept, jottingNameProblem } from '../../amounts/jotting-names.js'
import type { Jotting } from '../../document/formula.js'
import type { Change, Transaction, Workbook } from '../../document/workbook.js'
import { formulaIn } from '../edit-places.js'
import { wholeName, withNames } from '../renaming.js'
import { Refusal } from '../words.js'
import { fetchedLabels } from './fetched-words.js'

/**
 * Puts a jotting at its id, or adds it last; a new name is taken along into the amounts and jottings that
 * use it. Throws Refusal for a name that cannot be.
 */
export function putJotting(workbook: Workbook, id: string, typed: Jotting): Transaction {
  const jotting: Jotting = { ...typed, name: jottingNameAsKept(typed.name) }
  const formula = formulaIn(workbook, id)
  const all = formula.jottings ?? []
  const before = all.find(j => j.id === jotting.id)
  const problem = jottingNameProblem(jotting.name, formula, jotting.id)
  if (problem) throw new Refusal(problem)
  const put = before ? all.map(j => (j.id === jotting.id ? jotting : j)) : [...all, jotting]
  const named = before && wholeName(before.name, jotting.name)
  const renamed = (text: string) => (named ? withNames(text, named) : text)
  const jottings = put.map(j => (j.id === jotting.id ? j : { ...j, text: renamed(j.text) }))
  const lines = formula.stages.flatMap(stage =>
    stage.lines.flatMap((line): Change[] => {
      const amount = renamed(line.amount)
      if (amount === line.amount) return []
      return [{ of: 'line', formula: id, stage: stage.id, id: line.id, value: { ...line, amount } }]
    }),
  )
  return {
    label: before ? fetchedLabels.changeJotting(jotting.name) : fetchedLabels.jotDown(jotting.name),
    changes: [{ of: 'fields', formula: id, value: { jottings } }, ...lines],
  }
}

/** Takes a jotting away; amounts that use it say that it is gone. */
export function removeJotting(workbook: Workbook, id: string, jotting: string): Transaction | undefined {
  const all = formulaIn(workbook, id).jottings ?? []
  const gone = all.find(j => j.id === jotting)
  if (!gone) return undefined
  const jottings = all.filter(j => j !== gone)
  return {
    label: fetchedLabels.remove(gone.name),
    changes: [{ of: 'fields', formula: id, value: { jottings } }],
  }
}
