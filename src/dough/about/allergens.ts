import { type Line, nameKey } from '../document/formula.js'
import { type Allergens, type Ingredient, isUnlisted } from '../document/larder.js'
import type { FigureSheet } from '../sheet/figures.js'

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
  readonly notKnown: readonly string[] // a phrase each: `not known: ground cardamom`
}

/** To be said with every list of allergens. */
export const allergenSentence =
  'This is what the larder lists for these ingredients, and nothing more: it clears no bread for anybody. A starter carries the flour it is fed with, and flour dust settles everywhere. Your suppliers’ labels and local food law decide.'

/** `Not known: ground cardamom; lemon zest.`: what nobody has said anything of. */
export function notKnownSentence(phrases: readonly string[]): string {
  const joined = phrases.map((phrase, at) => (at ? phrase.replace(/^not known: /, '') : phrase)).join('; ')
  return `${joined.charAt(0).toUpperCase()}${joined.slice(1)}.`
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
  const notKnown = new Map<string, string>()
  for (const { line, ingredient } of ingredientLines(sheet)) {
    const name = line.ingredient.trim()
    const isStarter = sheet.line(line.id).is === 'starter'
    const known = ingredient?.allergens
    const isFed = known && (ingredient.countsAs.kind === 'starter' || !isUnlisted(known))
    if (isStarter && !isFed)
      notKnown.set(nameKey(name), `not known: ${name}, for nobody has said which flour it is fed with`)
    else if (!known) notKnown.set(nameKey(name), `not known: ${name}`)
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
export interface Caution {
  readonly of: 'perishable' | 'raw flour' | 'heat' | 'in oil'
  readonly sentence: string
}

/** What each caution is about, to stand before its sentence. */
export const cautionWords: Readonly<Record<Caution['of'], string>> = {
  perishable: 'Egg or milk',
  'raw flour': 'Raw flour',
  heat: 'Heat',
  'in oil': 'In oil',
}

/** To be said after all cautions. */
export const localCodesSentence =
  'For bread made for others or for sale, local codes and the licence you work under say what has to be done.'

const perishableKinds: ReadonlySet<string> = new Set(['egg', 'dairy', 'cheese'])
const heat =
  /\b(?:pots?|lids?|steam(?:ed|ing)?|tins?|pans?|casseroles?|cast[- ]iron|dutch ovens?|griddles?|cocottes?|couvercles?|moules?|pierres?|baking (?:stones?|steels?)|stones?(?![- ]?(?:ground|milled)))\b|\bvapeur\b/i
const herbs =
  /\b(?:garlic|herbs?|rosemary|thyme|basil|oregano|sage|marjoram|ail|herbes|romarin|thym|basilic|origan|sauge)\b/i
const oils = /\b(?:oil|oils|huile)\b/i

/** The cautions usual in this work that a formula gives cause for. The figures are those of the public rule for perishable food. */
export function cautionsOf(sheet: FigureSheet): readonly Caution[] {
  const { formula } = sheet
  const lines = ingredientLines(sheet)
  const cautions: Caution[] = []
  if (lines.some(({ ingredient }) => ingredient && perishableKinds.has(ingredient.kind)))
    cautions.push({
      of: 'perishable',
      sentence:
        'This dough holds egg or milk. The usual public rule for perishable food is no more than 2 hours in all between 4 and 60 °C, and no more than 1 hour where it is warmer than 32 °C; keep it cold at 5 °C or below. A long warm proof needs care.',
    })
  if (lines.some(({ line }) => ['flour', 'starter'].includes(sheet.line(line.id).is)))
    cautions.push({
      of: 'raw flour',
      sentence:
        'Do not taste raw flour, dough or starter: flour is not treated to kill germs, and heating it at home is no remedy.',
    })
  const notes = [
    formula.name,
    formula.note,
    ...formula.stages.flatMap(s => [s.name, ...s.lines.map(l => l.note)]),
  ]
  if (notes.some(note => heat.test(note)))
    cautions.push({
      of: 'heat',
      sentence:
        'Hot pots, lids, tins, stones, oven doors and steam burn; water on hot glass or ceramic shatters it.',
    })
  const names = lines.map(({ line, ingredient }) => `${line.ingredient} ${ingredient?.name ?? ''}`)
  const inOil = [...notes, ...names].some(text => herbs.test(text) && oils.test(text))
  if (inOil || (names.some(name => herbs.test(name)) && names.some(name => oils.test(name))))
    cautions.push({
      of: 'in oil',
      sentence:
        'Garlic or herbs in oil can grow the germ of botulism: never leave them at room temperature, and make them fresh.',
    })
  return cautions
}
