import { type Allergens, isUnlisted } from '../document/larder.js'
import type { ListName } from './allergen-lists.js'

/** Something the public lists ask to be named, and the words each list has for it; a list left out does not ask. */
export interface Substance {
  readonly name: string
  readonly us?: readonly string[]
  readonly eu?: readonly string[]
  readonly canada?: readonly string[]
  readonly means: RegExp // an entry of any list that speaks of it
}

const gluten = (grain: string) => ({
  eu: [`cereals containing gluten (${grain})`],
  canada: [`gluten source (${grain})`],
})

/**
 * What the three lists name: the nine major food allergens of the United States (FALCPA with the FASTER Act
 * of 2021), Annex II of Regulation (EU) 1169/2011, and Canada's priority allergens and gluten sources.
 */
export const substances: readonly Substance[] = [
  {
    name: 'Wheat, with spelt and khorasan',
    us: ['wheat'],
    eu: ['cereals containing gluten (wheat)'],
    canada: ['wheat', 'gluten source (wheat)'],
    means: /^wheat$|\(wheat\)/,
  },
  { name: 'Rye', ...gluten('rye'), means: /\(rye\)/ },
  { name: 'Barley', ...gluten('barley'), means: /\(barley\)/ },
  { name: 'Oats', ...gluten('oats'), means: /\(oats\)/ },
  {
    name: 'Triticale',
    us: ['wheat'],
    eu: ['cereals containing gluten (wheat/rye hybrid)'],
    canada: ['wheat and triticale', 'gluten source (triticale)'],
    means: /triticale|hybrid/,
  },
  { name: 'Milk', us: ['milk'], eu: ['milk'], canada: ['milk'], means: /^milk\b/ },
  { name: 'Eggs', us: ['egg'], eu: ['eggs'], canada: ['eggs'], means: /^eggs?\b/ },
  { name: 'Soya', us: ['soybeans'], eu: ['soybeans'], canada: ['soy'], means: /^soy/ },
  {
    name: 'Sesame',
    us: ['sesame'],
    eu: ['sesame seeds'],
    canada: ['sesame seeds'],
    means: /^sesame/,
  },
  { name: 'Peanuts', us: ['peanuts'], eu: ['peanuts'], canada: ['peanuts'], means: /^peanuts?\b/ },
  {
    name: 'Tree nuts',
    us: ['tree nuts'],
    eu: ['nuts'],
    canada: ['tree nuts'],
    means: /^(tree )?nuts\b/,
  },
  { name: 'Mustard', eu: ['mustard'], canada: ['mustard'], means: /^mustard/ },
  { name: 'Celery', eu: ['celery'], means: /^celery/ },
  { name: 'Lupin', eu: ['lupin'], means: /^lupin/ },
  {
    name: 'Sulphites',
    eu: ['sulphur dioxide/sulphites if >10 mg/kg'],
    canada: ['sulphites if >=10 ppm'],
    means: /^sulphi|^sulphur/,
  },
  { name: 'Fish', us: ['fish'], eu: ['fish'], canada: ['fish'], means: /^fish/ },
  {
    name: 'Crustaceans',
    us: ['crustacean shellfish'],
    eu: ['crustaceans'],
    canada: ['crustaceans'],
    means: /^crustacean/,
  },
  { name: 'Molluscs', eu: ['molluscs'], canada: ['molluscs'], means: /^mollus[ck]/ },
]

const nothing: Allergens = { us: [], eu: [], canada: [] }

const entriesOf = (allergens: Allergens): readonly string[] => [
  ...allergens.us,
  ...allergens.eu,
  ...allergens.canada,
]

/** The substances, by name, that an ingredient's entries speak of. */
export function substancesIn(allergens = nothing): ReadonlySet<string> {
  const entries = entriesOf(allergens)
  const found = substances.filter(s => entries.some(entry => s.means.test(entry)))
  // Triticale is wheat to the law of the United States; by itself that does not make it wheat elsewhere.
  const onlyHybrid = found.some(s => s.name === 'Triticale') && !entries.some(e => e.includes('(wheat)'))
  return new Set(found.filter(s => !(onlyHybrid && s.means.test('wheat'))).map(s => s.name))
}

/** What is said of the allergens of an ingredient: the substances ticked, or that it is none of them. */
export interface Said {
  readonly contains: ReadonlySet<string> // names of substances
  readonly none: boolean
}

/**
 * The entries of the three lists for what is said; undefined where nothing is. Entries in `before` that speak of a substance still
 * there (`tree nuts (walnut)`), or of none (`check label: …`), stay as they were.
 */
export function allergensFor({ contains: names, none }: Said, before = nothing): Allergens | undefined {
  if (none) return nothing
  const had = substancesIn(before)
  const gone = substances.filter(s => had.has(s.name) && !names.has(s.name))
  const fresh = substances.filter(s => names.has(s.name) && !had.has(s.name))
  const list = (name: ListName): readonly string[] => {
    const stays = substances.filter(s => names.has(s.name) && had.has(s.name))
    const kept = before[name].filter(
      entry => !gone.some(s => says(s, name, entry)) || stays.some(s => says(s, name, entry)),
    )
    return [...new Set([...kept, ...fresh.flatMap(s => s[name] ?? [])])]
  }
  const lists = { us: list('us'), eu: list('eu'), canada: list('canada') }
  return isUnlisted(lists) ? undefined : lists
}

const says = (substance: Substance, list: ListName, entry: string): boolean =>
  substance.means.test(entry) || (substance[list]?.includes(entry) ?? false)
