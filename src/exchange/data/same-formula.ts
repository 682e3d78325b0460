import { type Formula, nameKey } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { sameData } from '../../dough/document/same-data.js'
import { sameCountsAs } from '../values/counts-as.js'
import { withoutIds } from './new-ids.js'

/** Whether two formulas differ in their ids alone. */
export const sameFormula = (a: Formula, b: Formula): boolean =>
  sameData(a, b) || sameData(withoutIds(a), withoutIds(b))

/**
 * As far as any file or text can say it: without kept states, its group and the words its lines were read from, and of its
 * meanings what the larder does not say.
 */
function bare({ states: _, group: _group, ...formula }: Formula, larder: Larder): Formula {
  const used = new Set(formula.stages.flatMap(stage => stage.lines.map(line => nameKey(line.ingredient))))
  const meanings = formula.meanings.flatMap(({ ingredient, countsAs }) => {
    const key = nameKey(ingredient)
    const isSaid = !used.has(key) || sameCountsAs(countsAs, larder.find(ingredient)?.countsAs)
    return isSaid ? [] : [{ ingredient: key, countsAs }]
  })
  const stages = formula.stages.map(stage => ({
    ...stage,
    lines: stage.lines.map(({ source: _source, ...line }) => line),
  }))
  return { ...formula, stages, meanings: meanings.sort((a, b) => (a.ingredient < b.ingredient ? -1 : 1)) }
}

/** Whether a formula that arrives is one that is here, by all that what it came in can say. */
export const isHere = (here: Formula, arriving: Formula, larder: Larder): boolean =>
  sameFormula(bare(here, larder), bare(arriving, larder))
