import type { CountsAs } from '../document/formula.js'
import { type Allergens, type Ingredient, isUnlisted, type Larder, larderOf } from '../document/larder.js'
import { larderTable } from './larder-data.js'

const allergens = (us: string, eu: string, canada: string): Allergens => {
  const list = (text: string) => (text ? text.split(' + ') : [])
  return { us: list(us), eu: list(eu), canada: list(canada) }
}
const gluten = (grain: string): Allergens =>
  allergens('', `cereals containing gluten (${grain})`, `gluten source (${grain})`)
const nut = (name: string, plural = name): Allergens =>
  allergens(`tree nuts (${name})`, `nuts (${name})`, `tree nuts (${plural})`)

/** What the letters of the table stand for in the lists of the United States, the European Union and Canada. */
const allergensOf: Readonly<Record<string, Allergens>> = {
  '': allergens('', '', ''),
  w: allergens('wheat', 'cereals containing gluten (wheat)', 'wheat + gluten source (wheat)'),
  r: gluten('rye'),
  b: gluten('barley'),
  o: gluten('oats'),
  t: allergens(
    'wheat',
    'cereals containing gluten (wheat/rye hybrid)',
    'wheat and triticale + gluten source (triticale)',
  ),
  m: allergens('milk', 'milk', 'milk'),
  e: allergens('egg', 'eggs', 'eggs'),
  y: allergens('soybeans', 'soybeans', 'soy'),
  x: allergens('check label: milk, soybeans', 'check label: milk, soybeans', 'check label: milk, soy'),
  z: allergens(
    'soybeans unless highly refined',
    'soybeans unless fully refined',
    'soy: highly refined oil is commonly treated as protein-free; check',
  ),
  u: allergens('', 'sulphur dioxide/sulphites if >10 mg/kg', 'sulphites if >=10 ppm'),
  s: allergens('sesame', 'sesame seeds', 'sesame seeds'),
  l: allergens('', 'lupin', ''),
  p: allergens('peanuts', 'peanuts', 'peanuts'),
  W: nut('walnut'),
  H: nut('hazelnut'),
  C: nut('pecan'),
  A: nut('almond'),
  P: nut('pistachio'),
  N: allergens('tree nuts (pine nut)', '', 'tree nuts (pine nuts)'),
}

const measureOf: Readonly<Record<string, 'cup' | 'tbsp' | 'tsp' | 'each' | 'density'>> = {
  c: 'cup',
  b: 'tbsp',
  t: 'tsp',
  e: 'each',
  d: 'density',
}

let notes: ReadonlyMap<string, string> = new Map()

/** Gives the usual ingredients their notes, by name, which are '' until then; `usual-notes.ts` has them. */
export const useNotes = (known: ReadonlyMap<string, string>): void => {
  notes = known
}

/** Millilitres in a US cup. */
const cup = 236.588

/** Flour, water and salt by their kind; starters by their hydration; grains, seeds, bran and starch are not flour. */
function countsAs(kind: string, hydration: number): CountsAs {
  if (kind === 'starter') return { kind, hydration }
  return { kind: kind === 'flour' || kind === 'water' || kind === 'salt' ? kind : 'other' }
}

function ingredient(row: string, kind: string, hydration: number): Ingredient {
  const [name = '', others = '', allergen = '', composition = '', weights = ''] = row.split('|')
  const [moisture = 0, fat = 0, sugar = 0, protein = 0, salt = 0] = composition
    .split(' ')
    .map(text => Number(`${text || 0}e-2`))
  const measures: { cup?: number; tbsp?: number; tsp?: number; each?: number; density?: number } = {}
  for (const text of weights.split(' ')) {
    const measure = measureOf[text.charAt(0)]
    if (measure) measures[measure] = Number(text.slice(1))
  }
  if (measures.cup) measures.density ??= Math.round((measures.cup / cup) * 1e4) / 1e4
  return {
    id: `usual-${name.toLowerCase().match(/\w+/g)!.join('-')}`,
    name,
    otherNames: others ? others.split(', ') : [],
    kind,
    countsAs: countsAs(kind, hydration),
    moisture: kind === 'starter' ? hydration / (1 + hydration) : moisture,
    fat,
    sugar,
    protein,
    salt,
    ...measures,
    allergens: allergensOf[allergen]!,
    get note() {
      return notes.get(name) ?? ''
    },
  }
}

function readTable(table: string): Ingredient[] {
  const ingredients: Ingredient[] = []
  let kind = ''
  let hydration = 0
  for (const row of table.trim().split('\n')) {
    if (row.startsWith('=')) {
      const heading = /^=(.+?)(?: (\d+)%)?$/.exec(row)!
      kind = heading[1]!
      hydration = Number(heading[2] ?? 0) / 100
    } else ingredients.push(ingredient(row, kind, hydration))
  }
  return ingredients
}

/**
 * What Tarebook knows before the baker adds anything. Ids stay the same from version to version, so that a
 * baker's changed copy takes the place of the usual one.
 */
export const usualLarder: readonly Ingredient[] = readTable(larderTable)

/**
 * Workbooks kept before a baker could say “none of these” have empty lists for what nobody said anything of.
 * Such lists are read as not known, unless the usual ingredient that was changed has empty ones as well.
 */
function asStated(own: Ingredient): Ingredient {
  const { allergens, ...unsaid } = own
  if (!allergens || own.noneListed || !isUnlisted(allergens)) return own
  const usual = usualLarder.find(({ id }) => id === own.id)?.allergens
  return usual && isUnlisted(usual) ? own : unsaid
}

let everybodys: Larder | undefined
/**
 * The usual larder with the baker's own ingredients over it; without any of them it is one and the same. An own one
 * whose allergens are empty lists without `noneListed` comes without allergens; the workbook it is in stays as it is,
 * to the byte.
 */
export function larderWith(own: readonly Ingredient[]): Larder {
  if (own.length > 0) return larderOf([...usualLarder, ...own.map(asStated)])
  everybodys ??= larderOf(usualLarder)
  return everybodys
}
