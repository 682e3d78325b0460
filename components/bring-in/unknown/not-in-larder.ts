import { type CountsAs, type Formula, type Meaning, nameKey } from '../../../src/dough/document/formula.js'
import type { Larder } from '../../../src/dough/document/larder.js'
import { guessCountsAs } from '../../../src/dough/larder/counts-as-guess.js'

/** An ingredient of what arrives of which nobody has said what it counts as. */
export interface NotInLarder {
  readonly key: string // what its name is compared by
  readonly name: string // as it stands there first
  readonly guess: CountsAs | undefined // from its name
  readonly isStage: boolean // of another formula that arrives with it: no name to guess from
}

/** What an ingredient is to count as, by the key of its name; `not known` leaves it at its weight. */
export type MeaningsSaid = ReadonlyMap<string, CountsAs | 'not known'>

const guessOf = (name: string): CountsAs | undefined => {
  const kind = guessCountsAs(name)
  return kind === 'starter' ? { kind, hydration: 1 } : kind && { kind }
}

/** What of a formula says by itself what an ingredient is. */
const saidIn = ({ stages, meanings }: Formula): Set<string> =>
  new Set([...stages.map(s => s.name), ...meanings.map(m => m.ingredient)].map(nameKey))

/** The ingredients of these formulas that neither the larder, nor a stage, nor a meaning that came along tells of. */
export function notInLarder(formulas: readonly Formula[], larder: Larder): readonly NotInLarder[] {
  const names = new Map<string, string>()
  for (const formula of formulas) {
    const said = saidIn(formula)
    for (const { ingredient } of formula.stages.flatMap(stage => stage.lines)) {
      const key = nameKey(ingredient)
      if (key !== '' && !names.has(key) && !said.has(key) && !larder.find(ingredient))
        names.set(key, ingredient.trim())
    }
  }
  const stages = new Set(formulas.flatMap(formula => formula.stages.map(stage => nameKey(stage.name))))
  return [...names].map(([key, name]) => {
    const isStage = stages.has(key)
    return { key, name, guess: isStage ? undefined : guessOf(name), isStage }
  })
}

/** What an ingredient will count as; undefined: nothing but its weight is counted. */
export function meaningOf({ key, guess }: NotInLarder, said: MeaningsSaid): CountsAs | undefined {
  const one = said.get(key) ?? guess
  return one === 'not known' ? undefined : one
}

/** The formulas with what the ingredients that are not in the larder count as, in each that has them. */
export function withMeanings(
  formulas: readonly Formula[],
  names: readonly NotInLarder[],
  said: MeaningsSaid,
): readonly Formula[] {
  const byKey = new Map(names.map(one => [one.key, one]))
  return formulas.map(formula => {
    const known = saidIn(formula)
    const meanings: Meaning[] = []
    for (const { ingredient } of formula.stages.flatMap(stage => stage.lines)) {
      const key = nameKey(ingredient)
      const one = byKey.get(key)
      const countsAs = one && meaningOf(one, said)
      if (!countsAs || known.has(key)) continue
      known.add(key)
      meanings.push({ ingredient: ingredient.trim(), countsAs })
    }
    return meanings.length > 0 ? { ...formula, meanings: [...formula.meanings, ...meanings] } : formula
  })
}
