import type { Worded } from '../../engine/index.js'
import { type Line, nameKey } from '../document/formula.js'
import { type Allergens, type Ingredient, isUnlisted } from '../document/larder.js'
import type { FigureSheet } from '../sheet/figures.js'
import { type CautionDiagnostic, caution, type NotKnown } from './words.js'

/** An entry of a public list and the ingredients of the formula that the larder lists under it. */
export interface ListedAllergen {
  readonly entry: string
  readonly ingredients: readonly string[]
}

/** What a formula lists: information from the larder, never a clearance. */
export interface FormulaAllergens {
  readonly us: readonly ListedAllergen[]
  readonly eu: readonly ListedAllergen[]
  readonly canada: readonly ListedAllergen[]
  readonly notKnown: readonly NotKnown[]
}

/** The lines of all stages that are ingredients, with what the larder knows of each; a stage is what is in it. */
function ingredientLines(sheet: FigureSheet): { line: Line; ingredient: Ingredient | undefined }[] {
  const { stages } = sheet.formula
  const names = new Set(stages.map(({ name }) => nameKey(name)))
  return stages
    .flatMap(({ lines }) => lines)
    .filter(({ ingredient }) => ingredient.trim() !== '' && !names.has(nameKey(ingredient)))
    .map(line => ({ line, ingredient: sheet.larder.find(line.ingredient) }))
}

const lists = ['us', 'eu', 'canada'] as const

/**
 * What a formula lists among the public lists, through all its stages and starters. Only the larder states allergens,
 * never what a formula itself says an ingredient counts as.
 */
export function allergensOf(sheet: FigureSheet): FormulaAllergens {
  const found: Record<keyof Allergens, Map<string, Set<string>>> = {
    us: new Map(),
    eu: new Map(),
    canada: new Map(),
  }
  const notKnown = new Map<string, NotKnown>()
  for (const { line, ingredient } of ingredientLines(sheet)) {
    const name = line.ingredient.trim()
    const isStarter = sheet.line(line.id).is === 'starter'
    const known = ingredient?.allergens
    const isFed = known && (ingredient.countsAs.kind === 'starter' || !isUnlisted(known))
    if (!known || (isStarter && !isFed))
      notKnown.set(nameKey(name), { ingredient: name, isStarter: isStarter && !isFed })
    for (const list of lists)
      for (const entry of known?.[list] ?? []) {
        const ingredients = found[list].get(entry)
        if (ingredients) ingredients.add(name)
        else found[list].set(entry, new Set([name]))
      }
  }
  const listed = (list: keyof Allergens): ListedAllergen[] =>
    [...found[list]].map(([entry, ingredients]) => ({ entry, ingredients: [...ingredients] }))
  return { us: listed('us'), eu: listed('eu'), canada: listed('canada'), notKnown: [...notKnown.values()] }
}

/** Something to keep in mind at the bench. */
export type Caution = Worded<CautionDiagnostic>

const perishableKinds: ReadonlySet<string> = new Set(['egg', 'dairy', 'cheese'])
/** Whether an ingredient holds egg or milk, as far as the larder says. */
export const isPerishable = (ingredient: Ingredient | undefined): boolean =>
  ingredient !== undefined && perishableKinds.has(ingredient.kind)

const heat =
  /\b(?:pots?|lids?|steam(?:ed|ing)?|tins?|pans?|casseroles?|cast[- ]iron|dutch ovens?|griddles?|cocottes?|couvercles?|moules?|pierres?|baking (?:stones?|steels?)|stones?(?![- ]?(?:ground|milled)))\b|\bvapeur\b/i
const herbs =
  /\b(?:garlic|herbs?|rosemary|thyme|basil|oregano|sage|marjoram|ail|herbes|romarin|thym|basilic|origan|sauge)\b/i
const oils = /\b(?:oil|oils|huile)\b/i

/** The cautions usual in this work that a formula gives cause for. The figures are those of the public rule for perishable food. */
export function cautionsOf(sheet: FigureSheet): readonly Caution[] {
  const { formula } = sheet
  const lines = ingredientLines(sheet)
  const codes: CautionDiagnostic['code'][] = []
  if (lines.some(({ ingredient }) => isPerishable(ingredient))) codes.push('perishable')
  if (lines.some(({ line }) => ['flour', 'starter'].includes(sheet.line(line.id).is))) codes.push('rawFlour')
  const notes = [
    formula.name,
    formula.note,
    ...formula.stages.flatMap(s => [s.name, ...s.lines.map(l => l.note)]),
  ]
  if (notes.some(note => heat.test(note))) codes.push('heat')
  const names = lines.map(({ line, ingredient }) => `${line.ingredient} ${ingredient?.name ?? ''}`)
  const inOil = [...notes, ...names].some(text => herbs.test(text) && oils.test(text))
  if (inOil || (names.some(name => herbs.test(name)) && names.some(name => oils.test(name))))
    codes.push('inOil')
  return codes.map(code => caution({ code }))
}
