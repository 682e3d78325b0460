import { type Formula, sameName } from '../../../src/dough/document/formula.js'
import type { Transaction, Workbook } from '../../../src/dough/document/workbook.js'
import { arrivingBuilds } from '../../../src/dough/edits/builds/arriving-builds.js'
import { together } from '../../../src/dough/edits/edits.js'
import { addFormulas, replaceFormula } from '../../../src/dough/edits/fetched/shelf-edits.js'
import { bringInLabels } from './words.js'

/** What is to be done with a formula that was read. */
export type Choice = 'add' | 'replace' | 'leave'

/** The formula on the shelf that goes by the same name. */
export const namesake = (shelf: readonly Formula[], formula: Formula): Formula | undefined =>
  shelf.find(f => sameName(f.name, formula.name))

interface Plan {
  readonly transaction: Transaction
  readonly ids: readonly string[] // of the formulas as they will be on the shelf, in the order of the file
  readonly names: ReadonlyMap<string, string> // id as read → the name it will have
  readonly apart: ReadonlyMap<string, readonly string[]> // id as read → its builds that are not as those here, and become its own
}

/** One edit that does with each formula what was chosen; what has nothing to replace is added. */
export function planOf(
  workbook: Workbook,
  formulas: readonly Formula[],
  choice: (f: Formula) => Choice,
): Plan {
  const wanted = formulas.filter(f => choice(f) !== 'leave')
  const replaced = new Map<string, Formula>() // id as read → the one it replaces
  for (const formula of wanted) {
    const there = namesake(workbook.formulas, formula)
    if (there && choice(formula) === 'replace') replaced.set(formula.id, there)
  }
  const gone = new Set([...replaced.values()])
  const others = workbook.formulas.filter(f => !gone.has(f))
  const { formulas: all, apart } = arrivingBuilds(others, wanted)
  const added = all.filter(f => !replaced.has(f.id))
  const adding = addFormulas(workbook, added)
  const names = new Map(wanted.map(f => [f.id, f.name]))
  for (const change of adding.changes)
    if (change.of === 'formula' && change.value) names.set(change.id, change.value.name)
  const parts = [...replaced].map(([id, there]) =>
    replaceFormula(workbook, there.id, all.find(f => f.id === id)!),
  )
  const label =
    wanted.length === 1 ? bringInLabels.one(names.get(wanted[0]!.id)!) : bringInLabels.several(wanted.length)
  return {
    transaction: together(label, added.length ? [...parts, adding] : parts),
    ids: wanted.map(f => replaced.get(f.id)?.id ?? f.id),
    names,
    apart,
  }
}
