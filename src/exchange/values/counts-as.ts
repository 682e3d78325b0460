import { type CountsAs, type Formula, type Meaning, nameKey } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { larderWith } from '../../dough/larder/usual-larder.js'

/** `flour`, `water`, `salt`, `other`, or `starter 125%` with its hydration to 12 digits. */
export const countsAsText = (countsAs: CountsAs): string =>
  countsAs.kind === 'starter'
    ? `starter ${Number((countsAs.hydration * 100).toPrecision(12))}%`
    : countsAs.kind

/** The same back, in any case and with a decimal point; undefined for anything else. */
export function readCountsAs(text: string): CountsAs | undefined {
  const key = nameKey(text)
  if (key === 'flour' || key === 'water' || key === 'salt' || key === 'other') return { kind: key }
  const percent = /^starter (?:at )?(\d+(?:\.\d+)?) ?%$/.exec(key)?.[1]
  return percent === undefined ? undefined : { kind: 'starter', hydration: Number(`${percent}e-2`) }
}

export const sameCountsAs = (a: CountsAs | undefined, b: CountsAs | undefined): boolean =>
  a !== undefined && b !== undefined && countsAsText(a) === countsAsText(b)

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
