import '../cells/rare-cells-at-once.js'
import { type Formula, nameKey, type Stage, sameName } from '../document/formula.js'
import { openSheet } from '../sheet/sheet.js'

const sameShare = 1e-9

/** What a stage is made of: each ingredient's share of its weight, and for an earlier stage what that is made of. */
type MakeUp = ReadonlyMap<string, { readonly share: number; readonly of: MakeUp | undefined }>

const known = new WeakMap<Formula, Map<string, MakeUp | undefined>>()

/** Each stage's make-up, by its id; undefined where a weight is not known, or a stage takes itself. */
function makeUpsOf(formula: Formula): ReadonlyMap<string, MakeUp | undefined> {
  const before = known.get(formula)
  if (before) return before
  const sheet = openSheet(formula)
  const all = new Map<string, MakeUp | undefined>()
  known.set(formula, all)
  const made = (stage: Stage): MakeUp | undefined => {
    if (all.has(stage.id)) return all.get(stage.id)
    all.set(stage.id, undefined) // while it is looked at
    const weights = stage.lines.map(line => ({ line, grams: sheet.line(line.id).weight ?? Number.NaN }))
    const sum = weights.reduce((total, { grams }) => total + grams, 0)
    if (!(sum > 0)) return undefined
    const parts = new Map<string, { share: number; of: MakeUp | undefined }>()
    for (const { line, grams } of weights) {
      const taken = formula.stages.find(s => sameName(s.name, line.ingredient))
      const of = taken && made(taken)
      if (taken && !of) return undefined
      const key = nameKey(line.ingredient)
      parts.set(key, { share: (parts.get(key)?.share ?? 0) + grams / sum, of })
    }
    all.set(stage.id, parts)
    return parts
  }
  for (const stage of formula.stages) made(stage)
  return all
}

function isSame(a: MakeUp, b: MakeUp): boolean {
  return [...new Set([...a.keys(), ...b.keys()])].every(key => {
    const [one, other] = [a.get(key), b.get(key)]
    if (Math.abs((one?.share ?? 0) - (other?.share ?? 0)) > sameShare) return false
    if (!one?.of && !other?.of) return true
    return !one || !other || (one.of !== undefined && other.of !== undefined && isSame(one.of, other.of))
  })
}

/** Whether a stage of one formula is made up as one of another: the same shares of the same ingredients, to 1e-9. */
export function madeAlike(a: Formula, stage: string, b: Formula, other: string): boolean {
  const [one, two] = [makeUpsOf(a).get(stage), makeUpsOf(b).get(other)]
  return one !== undefined && two !== undefined && isSame(one, two)
}
