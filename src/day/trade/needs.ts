import { nameKey } from '../../dough/document/formula.js'
import type { Ingredient, Larder } from '../../dough/document/larder.js'
import type { DayMade, MadeLine } from './builds-made.js'
import { added, type Cost, costOf, noCost, packsFor } from './cost.js'

/** What all that is made needs of one ingredient, and what is to be bought for it. Grams as weighed. */
export interface Need {
  readonly key: string
  readonly name: string
  readonly known: Ingredient | undefined // as the larder has it
  readonly isOwn: boolean // the baker's own starter: it is kept, not bought
  readonly grams: number // of the lines whose weight is known
  readonly isAll: boolean // it is known of all of them
  readonly cost: Cost // of what is used
  readonly packs: number | undefined // that hold what is used; undefined: nobody said what a pack holds
  readonly short: number | undefined // grams wanted beyond what is there; undefined: nobody counts it
  readonly toBuy: number | undefined // packs: of what is short, or of all where it is not counted
  readonly buying: Cost // what those cost
}

/** What a day needs all told. */
export interface Needs {
  readonly all: readonly Need[] // the heaviest first
  readonly used: Cost
  readonly buying: Cost
}

interface Gathered {
  name: string
  known: Ingredient | undefined
  isOwn: boolean
  grams: number
  isAll: boolean
}

/** Ingredients by what they are in the larder, so that other names of one are it too. */
const keyOf = (name: string, known: Ingredient | undefined): string =>
  known ? `of ${known.id}` : nameKey(name)

/** What is made needs of each ingredient, through all stages; what one build takes of another is in that one's own lines. */
export function needsOf({ builds }: Pick<DayMade, 'builds'>, larder: Larder): Needs {
  const found = new Map<string, Gathered>()
  for (const { ingredient, isStage, isStarter, grams } of builds.flatMap(
    ({ lines }): readonly MadeLine[] => lines,
  )) {
    if (isStage || ingredient.trim() === '') continue
    const known = larder.find(ingredient)
    const key = keyOf(ingredient, known)
    const before = found.get(key) ?? { name: ingredient, known, isOwn: isStarter, grams: 0, isAll: true }
    found.set(key, {
      ...before,
      // What is written in two ways goes by the larder's name.
      name: nameKey(before.name) === nameKey(ingredient) ? before.name : (known?.name ?? before.name),
      grams: before.grams + (grams ?? 0),
      isAll: before.isAll && grams !== undefined,
    })
  }
  const all = [...found].map(([key, gathered]) => needOf(key, gathered)).sort((a, b) => b.grams - a.grams)
  const sum = (of: (need: Need) => Cost): Cost => all.map(of).reduce(added, noCost)
  return { all, used: sum(({ cost }) => cost), buying: sum(({ buying }) => buying) }
}

function needOf(key: string, { name, known, isOwn, grams, isAll }: Gathered): Need {
  const { pack, price, stock } = known ?? {}
  const used = costOf(name, grams, known, isOwn)
  const cost = isAll ? used : added(used, costOf(name, undefined, known, isOwn))
  const short = stock === undefined ? undefined : Math.max(0, grams - stock)
  const toBuy = pack === undefined ? undefined : packsFor(short ?? grams, pack)
  const bought: Cost =
    price === undefined || toBuy === undefined || price === 0
      ? costOf(name, short ?? grams, known, isOwn)
      : { ...noCost, amount: toBuy * price }
  return {
    key,
    name,
    known,
    isOwn,
    grams,
    isAll,
    cost,
    packs: pack === undefined ? undefined : packsFor(grams, pack),
    short,
    toBuy,
    buying: isAll ? bought : added(bought, costOf(name, undefined, known, isOwn)),
  }
}
