import { type Formula, type Meaning, nameKey } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { larderWith } from '../../dough/larder/usual-larder.js'
import { sameCountsAs } from './counts-as.js'

/**
 * The formula with what its ingredients count as in the baker's own larder written into it, where that is not what
 * everybody's larder says: so it means the same in a reader's workbook.
 */
export function withOwnMeanings(formula: Formula, larder: Larder | undefined): Formula {
  if (!larder) return formula
  const usual = larderWith([])
  const known = new Set([
    ...formula.meanings.map(({ ingredient }) => nameKey(ingredient)),
    ...formula.stages.map(({ name }) => nameKey(name)),
  ])
  const own: Meaning[] = []
  for (const { ingredient } of formula.stages.flatMap(s => s.lines)) {
    const countsAs = larder.find(ingredient)?.countsAs
    if (!countsAs || known.has(nameKey(ingredient))) continue
    known.add(nameKey(ingredient))
    if (!sameCountsAs(countsAs, usual.find(ingredient)?.countsAs)) own.push({ ingredient, countsAs })
  }
  return own.length ? { ...formula, meanings: [...formula.meanings, ...own] } : formula
}
