import { isLeeway, isScale } from '../dough/document/checks.js'
import type { Day } from '../dough/document/day.js'
import { type Formula, usualFlourWeight } from '../dough/document/formula.js'
import type { Ingredient } from '../dough/document/larder.js'
import { sameData } from '../dough/document/same-data.js'
import { optionsOf } from '../dough/document/workbook.js'

type Fields = Readonly<Record<string, unknown>>

export const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

export const hasTexts = (value: unknown, ...names: readonly string[]): value is Fields =>
  isFields(value) && names.every(name => typeof value[name] === 'string')

const isLine = (value: unknown): boolean => hasTexts(value, 'id', 'ingredient', 'amount')

const isStage = (value: unknown): boolean =>
  hasTexts(value, 'id', 'name') && Array.isArray(value.lines) && value.lines.every(isLine)

/** What a formula has when its record, of an earlier version, does not say. */
const usualFormula = { note: '', flourWeight: usualFlourWeight, meanings: [], keptSettings: [] }

/** A jotting as it was stored; undefined when it is not one. */
const readJotting = (value: unknown): unknown => (hasTexts(value, 'id', 'name', 'text') ? value : undefined)

function readState(value: unknown): unknown {
  if (!hasTexts(value, 'id', 'name', 'keptAt') || !hasTexts(value.formula, 'id')) return undefined
  const formula = readFormula(value.formula, String(value.formula.id))
  return formula && { ...value, formula }
}

/**
 * What a formula can do without, so that one jotting or kept state that cannot be read does not take the
 * formula with it. Those are kept in `unread`, a field that nothing else looks at, and written back with it.
 */
function readAsides(part: Fields): Fields {
  const known = isFields(part.unread) ? part.unread : {}
  const asides: Record<string, unknown> = {}
  const unread: Record<string, unknown> = { ...known }
  for (const [name, readOne] of [
    ['jottings', readJotting],
    ['states', readState],
  ] as const) {
    if (part[name] === undefined) continue
    const list: readonly unknown[] = Array.isArray(part[name]) ? part[name] : [part[name]]
    const damaged = list.filter(item => readOne(item) === undefined)
    asides[name] = list.map(readOne).filter(item => item !== undefined)
    const before = known[name]
    if (damaged.length) unread[name] = [...(Array.isArray(before) ? before : []), ...damaged]
  }
  return Object.keys(unread).length ? { ...asides, unread } : asides
}

/** Whether something of a formula in its record could not be read this time. */
export const lostSome = (formula: Formula, part: unknown): boolean =>
  'unread' in formula && !(isFields(part) && sameData(formula.unread, part.unread))

/** The formula a record holds; undefined when it is not one. */
export function readFormula(part: unknown, id: string): Formula | undefined {
  if (!hasTexts(part, 'id', 'name') || part.id !== id) return undefined
  const formula = { ...usualFormula, ...part, ...readAsides(part) } as unknown as Formula
  const whole =
    Array.isArray(formula.stages) &&
    formula.stages.length > 0 &&
    formula.stages.every(isStage) &&
    Array.isArray(formula.meanings) &&
    Array.isArray(formula.keptSettings) &&
    (formula.holds === undefined || Array.isArray(formula.holds)) &&
    Number.isFinite(formula.flourWeight)
  return whole ? formula : undefined
}

/** What is a list in a day, and what its items have at least. */
const dayLists: Readonly<Record<string, (item: unknown) => boolean>> = {
  breads: bread => hasTexts(bread, 'id', 'formula') && hasTexts(bread.batch, 'make'),
  ovens: oven => hasTexts(oven, 'id', 'name'),
  holds: hold => hasTexts(hold, 'moment', 'at'),
  asleep: night => hasTexts(night, 'from', 'until'),
  together: key => typeof key === 'string',
  mixes: mix => hasTexts(mix, 'bread', 'stage'),
}

/** Whether a part is a day, as far as its times can be planned; edits and files have looked at each of its fields. */
export const isDay = (part: unknown): part is Day =>
  hasTexts(part, 'id', 'name', 'date', 'zone', 'note') &&
  ['bakers', 'kitchen', 'fridge'].every(name => Number.isFinite(part[name])) &&
  Object.entries(dayLists).every(([name, is]) => {
    const list = part[name] ?? (name === 'mixes' ? [] : undefined)
    return Array.isArray(list) && list.every(is) && (name !== 'ovens' || list.length > 0)
  })

export const isIngredient = (part: unknown): part is Ingredient =>
  hasTexts(part, 'id', 'name', 'kind', 'note') &&
  Array.isArray(part.otherNames) &&
  hasTexts(part.countsAs, 'kind') &&
  (part.allergens === undefined || isFields(part.allergens))

/** What a workbook may have in a stored part, where it can be read; a scale that cannot is the usual one. */
export const optionsIn = ({
  scale,
  leeway,
  later,
}: {
  readonly scale?: unknown
  readonly leeway?: unknown
  readonly later?: unknown
} = {}): ReturnType<typeof optionsOf> =>
  optionsOf({
    scale: isScale(scale) ? scale : undefined,
    leeway: typeof leeway === 'number' && isLeeway(leeway) ? leeway : undefined,
    later: isFields(later) ? later : undefined,
  })

/** The name in a part that cannot be read, for the sentence that says so. */
export const nameIn = (part: unknown): { readonly name?: string } =>
  hasTexts(part, 'name') ? { name: String(part.name) } : {}
