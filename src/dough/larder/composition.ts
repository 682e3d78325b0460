import type { Composition, Ingredient } from '../document/larder.js'
import { compositionTable } from './composition-data.js'
import { usualLarder } from './usual-larder.js'

/** The part of sodium that salt is taken to be of it: sodium × 2.5 (Annex I of Regulation (EU) 1169/2011). */
const saltOfSodium = 2.5

const number = (text: string): number | undefined => (text === '-' ? undefined : Number(text))

/** One row of the table as gram a gram; undefined where the database does not say enough of it. */
function compositionIn(row: string): Composition | undefined {
  const [fat, carbohydrate, fibre, sugars, protein, sodium] = row.split(' ').map(number)
  if (fat === undefined || carbohydrate === undefined || fibre === undefined) return undefined
  if (protein === undefined || sodium === undefined) return undefined
  return {
    fat: fat / 100,
    carbohydrate: Math.max(0, carbohydrate - fibre) / 100,
    ...(sugars !== undefined && { sugars: sugars / 100 }),
    fibre: fibre / 100,
    protein: protein / 100,
    salt: (sodium * saltOfSodium) / 1e5,
  }
}

let table: ReadonlyMap<string, Composition | undefined> | undefined

function tabled(name: string): Composition | undefined {
  table ??= new Map(
    compositionTable
      .trim()
      .split('\n')
      .map(row => row.split('|') as [string, string])
      .map(([of, figures]) => [of, compositionIn(figures)]),
  )
  return table.get(name)
}

const usual: ReadonlyMap<string, Ingredient> = new Map(usualLarder.map(one => [one.id, one]))
const compared = ['fat', 'sugar', 'protein', 'salt', 'moisture'] as const

/** What is in a gram of an ingredient, and who says so. */
export interface KnownComposition {
  readonly composition: Composition
  readonly from: 'table' | 'larder'
}

/**
 * What a gram of an ingredient holds: as it was typed in the larder, or as the table has the usual one, as long as the baker's own does
 * not say otherwise. Undefined where nobody says.
 */
export function compositionOf(ingredient: Ingredient | undefined): KnownComposition | undefined {
  if (!ingredient) return undefined
  if (ingredient.composition) return { composition: ingredient.composition, from: 'larder' }
  const as = usual.get(ingredient.id)
  const composition = as && tabled(as.name)
  if (!composition || compared.some(field => as[field] !== ingredient[field])) return undefined
  return { composition, from: 'table' }
}

/** Of which usual ingredients the database's sugars are doubtful: they are high against other wheats. */
export const doubtfulSugars: ReadonlySet<string> = new Set(['usual-wholemeal-spelt', 'usual-khorasan-flour'])
