import { isFields } from '../../dough/data/fields.js'
import { type Formula, newId } from '../../dough/document/formula.js'
import { sameData } from '../../dough/document/same-data.js'
import {
  type Cleared,
  optionsOf,
  type Workbook,
  type WorkbookOptions,
  withList,
} from '../../dough/document/workbook.js'
import { fromAnotherTab } from './words.js'

interface HasId {
  readonly id: string
}

interface Named extends HasId {
  readonly name?: unknown
}

/** The workbook that keeps what two tabs did, and the names of the copies that took. */
export interface Merged {
  readonly workbook: Workbook
  readonly copies: readonly string[]
}

/**
 * Brings edits made here and not yet saved (`base` → `mine`) together with what another tab saved meanwhile
 * (`base` → `theirs`), and loses nothing:
 * a formula changed in one of them is taken as changed; changed in both, theirs stays and mine is kept beside it as a
 * copy named “… (from another tab)”; deleted in one and changed in the other, the changed one is kept. Likewise the
 * larder's ingredients, the days and the bakes. What one of them deleted is cleared away, unless it is kept after all. Theirs decides the workbook's name, its scale, its leeway, its currency, its fields of later versions and the order where both
 * changed them.
 */
export function merge(base: Workbook, mine: Workbook, theirs: Workbook): Merged {
  const copies: string[] = []
  const decides = (name: 'name' | keyof WorkbookOptions) =>
    sameData(theirs[name], base[name]) ? mine : theirs
  const [was, here, there] = inOneGroup(base, mine, theirs)
  const shelf: Workbook = {
    ...optionsOf({
      scale: decides('scale').scale,
      leeway: decides('leeway').leeway,
      currency: decides('currency').currency,
      later: decides('later').later,
    }),
    name: decides('name').name,
    formulas: mergeLists(was!, here!, there!, (theirs, copy) => [theirs, copy], copies),
    // In a larder the later of two with one other name wins: that stays theirs.
    larder: mergeLists(base.larder, mine.larder, theirs.larder, (there, copy) => [copy, there], copies),
  }
  const [baseDays, myDays, theirDays] = [base, mine, theirs].map(({ days = [] }) => days)
  const days = mergeLists(baseDays!, myDays!, theirDays!, (there, copy) => [there, copy], copies)
  const kept = withList(shelf, 'days', days)
  const cleared = mergeCleared(base, mine, theirs, kept)
  const [baseBakes, myBakes, theirBakes] = [base, mine, theirs].map(({ bakes = [] }) => bakes)
  const bakes = mergeLists(baseBakes!, myBakes!, theirBakes!, (there, copy) => [there, copy], copies)
  const workbook = withList(withList(kept, 'cleared', cleared), 'bakes', bakes)
  const asTheirs =
    workbook.name === theirs.name &&
    sameData(optionsOf(workbook), optionsOf(theirs)) &&
    sameItems(workbook.formulas, theirs.formulas) &&
    sameItems(workbook.larder, theirs.larder) &&
    sameItems(days, theirDays!) &&
    sameItems(bakes, theirBakes!) &&
    sameItems(cleared, theirs.cleared ?? [])
  return { workbook: asTheirs ? theirs : workbook, copies }
}

/**
 * The three shelves with each formula in the group that it comes to be in, theirs where both have put it into another: what
 * else was done to it decides then whether it takes a copy.
 */
function inOneGroup(base: Workbook, mine: Workbook, theirs: Workbook): readonly (readonly Formula[])[] {
  const shelves = [base, mine, theirs].map(({ formulas }) => byId(formulas))
  const grouped = (formula: Formula): Formula => {
    const [was, here, there] = shelves.map(shelf => shelf.get(formula.id))
    if (!was || !here || !there) return formula
    const { group } = there.group === was.group ? here : there
    if (formula.group === group) return formula
    const { group: _group, ...others } = formula
    return { ...others, ...(group && { group }) }
  }
  return [base, mine, theirs].map(({ formulas }) => formulas.map(grouped))
}

const sameItems = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i])

const byId = <T extends HasId>(list: readonly T[]): Map<string, T> =>
  new Map(list.map(item => [item.id, item]))

function mergeLists<T extends Named>(
  base: readonly T[],
  mine: readonly T[],
  theirs: readonly T[],
  beside: (there: T, copy: T) => readonly T[],
  copies: string[],
): readonly T[] {
  const [inBase, inMine, inTheirs] = [byId(base), byId(mine), byId(theirs)]
  const sameOrder = sameItems([...inBase.keys()], [...inTheirs.keys()])
  const [first, second] = sameOrder ? [inMine, inTheirs] : [inTheirs, inMine]
  const ids = new Set([...first.keys(), ...second.keys()])

  const copyOf = (item: T): T => {
    const copy = { ...item, id: newId(), name: fromAnotherTab(String(item.name)) }
    copies.push(copy.name)
    return copy
  }

  return [...ids].flatMap(id => {
    const [was, here, there] = [inBase.get(id), inMine.get(id), inTheirs.get(id)]
    if (sameData(was, there) || sameData(here, there))
      return here ? [sameData(here, there) ? there! : here] : []
    if (sameData(was, here)) return there ? [there] : []
    if (there && here) return beside(there, copyOf(here))
    return [there ?? here!]
  })
}

/** Whether what was deleted is in a workbook. */
function isThere({ formulas, larder, days = [] }: Workbook, { of, thing, formula }: Cleared): boolean {
  const lists: Readonly<Record<string, readonly HasId[] | undefined>> = {
    formula: formulas,
    ingredient: larder,
    day: days,
    state: formulas.find(({ id }) => id === formula)?.states,
  }
  return isFields(thing) && lists[String(of)]?.some(({ id }) => id === thing.id) === true
}

/**
 * What was deleted in either tab. What is in `kept` after all, since the other tab had changed it, is not cleared away; what
 * both deleted is once.
 */
function mergeCleared(base: Workbook, mine: Workbook, theirs: Workbook, kept: Workbook): readonly Cleared[] {
  const [inBase, inMine, inTheirs] = [base, mine, theirs].map(({ cleared = [] }) => byId(cleared))
  const stays = (one: Cleared): boolean => {
    if (inBase!.has(one.id)) return inMine!.has(one.id) && inTheirs!.has(one.id)
    return isThere(inTheirs!.has(one.id) ? theirs : mine, one) || !isThere(kept, one)
  }
  const there = [...inTheirs!.values()].filter(stays)
  const isSame = (a: Cleared, b: Cleared): boolean => a.of === b.of && sameData(a.thing, b.thing)
  const here = [...inMine!.values()].filter(
    one => !inTheirs!.has(one.id) && stays(one) && !there.some(other => isSame(one, other)),
  )
  return [...there, ...here]
}
