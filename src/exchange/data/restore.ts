import '../../dough/larder/usual-notes.js'
import type { Bake } from '../../day/bench/bake.js'
import { bakesIn } from '../../day/bench/bake-data.js'
import { joinedBakes } from '../../day/bench/joined-bakes.js'
import { isFields } from '../../dough/data/fields.js'
import type { Day } from '../../dough/document/day.js'
import { type Formula, nameKey, newId } from '../../dough/document/formula.js'
import type { Ingredient } from '../../dough/document/larder.js'
import { sameData } from '../../dough/document/same-data.js'
import {
  type Change,
  type Cleared,
  clearedFor,
  type Transaction,
  type Unread,
  type Workbook,
} from '../../dough/document/workbook.js'
import { clearingAway } from '../../dough/edits/clear-away.js'
import { freeName } from '../../dough/edits/fetched/shelf-edits.js'
import { larderWith, usualLarder } from '../../dough/larder/usual-larder.js'
import { idsFor, withIds, withTheseIds } from './new-ids.js'
import { sameFormula } from './same-formula.js'
import { fromFile, restoreLabels } from './words.js'

/** Something of a workbook file beside what the workbook has of it. */
export interface Incoming<T> {
  readonly is: 'new' | 'same' | 'different'
  readonly incoming: T
  readonly current?: T // what it is compared with: of the same id, or else of the same name; of the usual larder too
}

/** What a workbook file would change. */
export interface RestorePlan {
  readonly formulas: readonly Incoming<Formula>[] // in the order of the file
  readonly ingredients: readonly Incoming<Ingredient>[] // of the larder
  readonly days: readonly Incoming<Day>[]
  readonly bakes: readonly Incoming<Bake>[] // of one that is here too, both are brought together
  readonly missing: {
    readonly formulas: readonly Formula[]
    readonly ingredients: readonly Ingredient[]
    readonly days: readonly Day[]
    readonly bakes: readonly Bake[]
  } // here but not in the file: gone after replacing
  readonly name: { readonly current: string; readonly incoming: string } | undefined // where they differ
  readonly scaleDiffers: boolean
  readonly leewayDiffers: boolean
  readonly currencies: { readonly current: string; readonly incoming: string } | undefined // where both are said and differ
  readonly cleared: readonly Cleared[] // deleted where the file comes from, and not here
  readonly later: readonly string[] // names of the file's fields of a later version that are not here
}

/** What becomes of something that is both in the file and here, and differs. */
export type OnDifference = 'keep' | 'beside' | 'take' // what is here; both, the file's under a free name; the file's

/** Merging adds what is new; replacing makes the workbook what the file holds. */
export type RestoreChoice =
  | {
      readonly way: 'merge'
      readonly differing: OnDifference
      readonly each?: ReadonlyMap<string, OnDifference> // by the incoming id, where it is decided otherwise
    }
  | { readonly way: 'replace' }

interface Kept {
  readonly id: string
  readonly name?: unknown
}

interface Comparing<T> {
  readonly usual?: readonly T[] // what is known beside that of the workbook
  readonly key?: (item: T) => string // what things without a common id are matched by: usually their names
}

function compared<T extends Kept>(
  current: readonly T[],
  incoming: readonly T[],
  same: (a: T, b: T) => boolean,
  { usual = [], key = ({ name }) => nameKey(String(name)) }: Comparing<T> = {},
): Incoming<T>[] {
  const known = [...usual, ...[...current].reverse()]
  const byId = new Map(known.map(item => [item.id, item]))
  const byName = new Map(known.map(item => [key(item), item]))
  const ids = new Set(incoming.map(({ id }) => id))
  const used = new Set<T>()
  return incoming.map(item => {
    // What is here under another incoming id is that one's to compare with.
    const namesake = byName.get(key(item))
    const beside = byId.get(item.id) ?? (namesake && !ids.has(namesake.id) ? namesake : undefined)
    if (!beside || used.has(beside)) return { is: 'new', incoming: item }
    used.add(beside)
    return { is: same(beside, item) ? 'same' : 'different', incoming: item, current: beside }
  })
}

const sameIngredient = (a: Ingredient, b: Ingredient): boolean => sameData({ ...a, id: '' }, { ...b, id: '' })

/** The ids of a formula's parts in the file, by what they are here. */
const idsHere = ({ incoming, current }: Incoming<Formula>): ReadonlyMap<string, string> =>
  current ? idsFor(incoming, current) : new Map()

/** What a workbook file would change here, to be looked at before anything is changed. */
export function restorePlan(current: Workbook, incoming: Workbook): RestorePlan {
  const formulas = compared(current.formulas, incoming.formulas, sameFormula)
  const ingredients = compared(current.larder, incoming.larder, sameIngredient, { usual: usualLarder })
  const ids = new Map(formulas.flatMap(item => (item.is === 'same' ? [...idsHere(item)] : [])))
  const days = compared(
    current.days ?? [],
    incoming.days ?? [],
    (here, file) => sameData({ ...here, id: '' }, { ...withTheseIds(file, ids), id: '' }),
    { key: ({ name, date }) => `${date} ${nameKey(name)}` },
  )
  const bakesHere = bakesIn(current)
  const bakes = compared(bakesHere, bakesIn(incoming), sameData, { key: ({ id }) => id })
  const there = new Set<unknown>([...formulas, ...ingredients, ...days, ...bakes].map(item => item.current))
  return {
    formulas,
    ingredients,
    days,
    bakes,
    missing: {
      formulas: current.formulas.filter(f => !there.has(f)),
      ingredients: current.larder.filter(i => !there.has(i)),
      days: (current.days ?? []).filter(day => !there.has(day)),
      bakes: bakesHere.filter(bake => !there.has(bake)),
    },
    name: current.name === incoming.name ? undefined : { current: current.name, incoming: incoming.name },
    scaleDiffers: !sameData(current.scale, incoming.scale),
    leewayDiffers: current.leeway !== incoming.leeway,
    currencies:
      current.currency && incoming.currency && current.currency !== incoming.currency
        ? { current: current.currency, incoming: incoming.currency }
        : undefined,
    cleared: clearedElsewhere(current, incoming),
    later: Object.keys(incoming.later ?? {}).filter(name => !Object.hasOwn(current.later ?? {}, name)),
  }
}

/** What the file has cleared away, not yet for too long, and what is neither here nor cleared away here. */
function clearedElsewhere(current: Workbook, { cleared = [] }: Workbook): Cleared[] {
  const limit = new Date(Date.now() - clearedFor).toISOString()
  const here = new Set((current.cleared ?? []).map(({ id }) => id))
  const things = [
    ...current.formulas,
    ...current.larder,
    ...(current.days ?? []),
    ...current.formulas.flatMap(({ states = [] }) => states),
  ]
  const ids = new Set<unknown>(things.map(({ id }) => id))
  return cleared.filter(
    ({ id, at, thing }) => at >= limit && !here.has(id) && !(isFields(thing) && ids.has(thing.id)),
  )
}

/** What is cleared away, of formulas and their parts that are called by these ids here. */
function withTheirIds({ ...cleared }: Cleared, ids: ReadonlyMap<string, string>): Cleared {
  const { of, thing, formula } = cleared
  if (of === 'day') return { ...cleared, thing: withTheseIds(thing as Day, ids) }
  if (of === 'state') return { ...cleared, formula: ids.get(String(formula)) ?? formula }
  return cleared
}

/** The changes that make the list of `of` what the file holds; what is the same stays the same object. */
function replaced<T extends Kept>(
  items: readonly Incoming<T>[],
  missing: readonly T[],
  put: (id: string, value?: T, index?: number) => Change,
): Change[] {
  const stay = new Set(items.map(({ incoming }) => incoming.id))
  const gone = items.flatMap(({ current }) => (current && !stay.has(current.id) ? [put(current.id)] : []))
  const there = items.map(({ is, current, incoming }, index) =>
    put(incoming.id, is === 'same' && current?.id === incoming.id ? current : incoming, index),
  )
  return [...missing.map(({ id }) => put(id)), ...gone, ...there]
}

const ofFormula = (id: string, value?: Formula, index?: number): Change => ({
  of: 'formula',
  id,
  ...(value && { value }),
  ...(index === undefined ? {} : { index }),
})
const ofDay = (id: string, value?: Day, index?: number): Change => ({
  of: 'day',
  id,
  ...(value && { value }),
  ...(index === undefined ? {} : { index }),
})
const ofBake = (id: string, value?: Bake): Change => ({
  of: 'bake',
  id,
  ...(value && { value: value as unknown as Unread }),
})
const ofCleared = (value: Cleared): Change => ({ of: 'cleared', id: value.id, value })
/** What is here and in the file too, alike. */
const sameInBoth = ({ formulas, ingredients, days }: RestorePlan): ReadonlySet<unknown> =>
  new Set(
    [...formulas, ...ingredients, ...days].flatMap(({ is, current }) => (is === 'same' ? [current] : [])),
  )
const ofIngredient = (id: string, value?: Ingredient, index?: number): Change => ({
  of: 'ingredient',
  id,
  ...(value && { value }),
  ...(index === undefined ? {} : { index }),
})

/** A price in another currency would be taken for one in this. */
const withoutPrice = ({ price: _price, ...ingredient }: Ingredient): Ingredient => ingredient

/**
 * Brings a workbook file into the workbook, as one edit. Merging leaves all that is here as it is but for what
 * the choice says to take from the file: new things are added, under a free name each, and the workbook keeps its
 * name, its scale, its currency and each field of a later version where it has them: prices of the file in another currency are left out. An edit without changes where there is nothing to do.
 */
export function mergeWorkbooks(current: Workbook, incoming: Workbook, choice: RestoreChoice): Transaction {
  const plan = restorePlan(current, incoming)
  if (choice.way === 'replace') {
    const replacing: Transaction = {
      label: restoreLabels.replace,
      changes: [
        {
          of: 'workbook',
          value: {
            name: incoming.name,
            scale: incoming.scale,
            leeway: incoming.leeway,
            currency: incoming.currency,
            later: incoming.later,
          },
        },
        ...replaced(plan.formulas, plan.missing.formulas, ofFormula),
        ...replaced(plan.ingredients, plan.missing.ingredients, ofIngredient),
        // Ids within a day are those of the formulas that the file holds.
        ...replaced(
          plan.days.map(day => ({ ...day, is: sameData(day.current, day.incoming) ? 'same' : day.is })),
          plan.missing.days,
          ofDay,
        ),
        ...plan.missing.bakes.map(({ id }) => ofBake(id)),
        ...plan.bakes.flatMap(({ is, incoming }) => (is === 'same' ? [] : [ofBake(incoming.id, incoming)])),
        ...plan.cleared.map(ofCleared),
      ],
    }
    return clearingAway(current, replacing, { replaced: true, but: sameInBoth(plan) })
  }

  const onDifference = ({ incoming: { id } }: Incoming<Kept>) => choice.each?.get(id) ?? choice.differing
  let shelf = current // with what is added so far, for its names
  const changes: Change[] = []
  const ids = new Map<string, string>() // of the file's formulas and their parts, by what they are here
  const become = (from: Formula, to: Formula) => {
    for (const [id, here] of idsFor(from, to)) ids.set(id, here)
  }
  for (const item of plan.formulas) {
    if (item.is === 'same') {
      become(item.incoming, item.current!)
      continue
    }
    const then = item.is === 'new' ? 'beside' : onDifference(item)
    // Its parts are called as in the file or as here: those of one origin have the same ids.
    if (then !== 'beside') ids.set(item.incoming.id, item.current!.id)
    if (then === 'keep') continue
    if (then === 'take') {
      const { id } = item.current!
      const name = shelf.formulas.some(f => f.id !== id && nameKey(f.name) === nameKey(item.incoming.name))
        ? freeName(shelf, item.incoming.name)
        : item.incoming.name
      const value = { ...item.incoming, id, name }
      changes.push(ofFormula(id, value))
      shelf = { ...shelf, formulas: shelf.formulas.map(f => (f.id === id ? value : f)) }
      continue
    }
    const taken = shelf.formulas.some(f => f.id === item.incoming.id)
    const value = {
      ...(taken ? withIds(item.incoming) : item.incoming),
      name: freeName(shelf, item.incoming.name),
    }
    become(item.incoming, value)
    changes.push(ofFormula(value.id, value))
    shelf = { ...shelf, formulas: [...shelf.formulas, value] }
  }
  const larder = larderWith(current.larder)
  const larderIds = new Set(current.larder.map(({ id }) => id))
  for (const item of plan.ingredients) {
    const { is } = item
    const ingredient = plan.currencies ? withoutPrice(item.incoming) : item.incoming
    const then = is === 'new' ? 'beside' : is === 'same' ? 'keep' : onDifference(item)
    if (then === 'keep') continue
    if (then === 'take') {
      const { id } = item.current!
      changes.push(ofIngredient(id, { ...ingredient, id }))
      continue
    }
    // What is called by names that are known here already would change the formulas that are here.
    const value = {
      ...ingredient,
      id: is === 'new' && !larderIds.has(ingredient.id) ? ingredient.id : newId(),
      name: is === 'new' ? ingredient.name : fromFile(ingredient.name),
      otherNames: ingredient.otherNames.filter(name => !larder.find(name)),
    }
    changes.push(ofIngredient(value.id, value))
  }
  const dayIds = new Map<string, string>()
  for (const item of plan.days) {
    if (item.current) dayIds.set(item.incoming.id, item.current.id)
    const then = item.is === 'new' ? 'beside' : item.is === 'same' ? 'keep' : onDifference(item)
    if (then === 'keep') continue
    const day = withTheseIds(item.incoming, ids)
    const isFree = !(current.days ?? []).some(({ id }) => id === day.id)
    const value: Day =
      then === 'take'
        ? { ...day, id: item.current!.id }
        : item.is === 'new'
          ? { ...day, id: isFree ? day.id : newId() }
          : { ...day, id: newId(), name: fromFile(day.name) }
    changes.push(ofDay(value.id, value))
    dayIds.set(item.incoming.id, value.id)
  }
  for (const { is, incoming, current: here } of plan.bakes) {
    if (is === 'same') continue
    const bake =
      incoming.day === undefined ? incoming : { ...incoming, day: dayIds.get(incoming.day) ?? incoming.day }
    changes.push(ofBake(bake.id, here ? joinedBakes(here, bake) : bake))
  }
  for (const cleared of plan.cleared) changes.push(ofCleared(withTheirIds(cleared, ids)))
  const name = current.name === '' ? incoming.name : current.name
  const scale = current.scale ?? incoming.scale
  const leeway = current.leeway ?? incoming.leeway
  const currency = current.currency ?? incoming.currency
  // What is here comes first and wins.
  const later =
    plan.later.length > 0 ? { ...current.later, ...incoming.later, ...current.later } : current.later
  if (
    name !== current.name ||
    scale !== current.scale ||
    leeway !== current.leeway ||
    currency !== current.currency ||
    later !== current.later
  )
    changes.unshift({ of: 'workbook', value: { name, scale, leeway, currency, later } })
  return clearingAway(current, { label: restoreLabels.add, changes }, { replaced: true })
}
