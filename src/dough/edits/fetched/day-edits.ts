import { isLeeway } from '../../document/checks.js'
import { type Day, type DayBread, type DayMix, type Oven, usualLeeway } from '../../document/day.js'
import { type DayProblem, problemOfDay } from '../../document/day-checks.js'
import { dayProblem } from '../../document/day-words.js'
import { newId } from '../../document/formula.js'
import { sameData } from '../../document/same-data.js'
import type { Transaction, Workbook } from '../../document/workbook.js'
import { clearingAway } from '../clear-away.js'
import { Refusal } from '../words.js'
import { dayLabels, refuseDay } from './day-edit-words.js'

/** A bread of a day by ids. */
export interface BreadAt {
  readonly day: string
  readonly bread: string
}

/** An oven that heats for half an hour and recovers in ten minutes. */
export const newOven = (name: string, fields: Partial<Omit<Oven, 'id' | 'name'>> = {}): Oven => ({
  between: 10,
  change: 20,
  heating: 30,
  ...fields,
  id: newId(),
  name,
})

/** A day without breads, with what is usual where it is not said: a kitchen of 22 °C, a fridge of 4 °C, nights from 22:30 to 6:00. */
export const newDay = (fields: Pick<Day, 'name' | 'date' | 'zone'> & Partial<Omit<Day, 'id'>>): Day => ({
  breads: [],
  asleep: [{ from: '22:30', until: '6:00' }],
  bakers: 1,
  ovens: [newOven('Oven')],
  kitchen: 22,
  fridge: 4,
  together: [],
  holds: [],
  note: '',
  ...fields,
  id: newId(),
})

/** The day by its id. Throws Refusal when it is gone. */
export function dayIn({ days = [] }: Workbook, id: string): Day {
  return days.find(day => day.id === id) ?? refuseDay({ code: 'dayGone' })
}

const breadIn = (day: Day, id: string): DayBread =>
  day.breads.find(bread => bread.id === id) ?? refuseDay({ code: 'breadGone' })

const nameOfFormula = ({ formulas }: Workbook, id: string): string =>
  formulas.find(formula => formula.id === id)?.name ?? dayLabels.aBread

const refuseFor = (problem: DayProblem | undefined): void => {
  if (problem) throw new Refusal(problem)
}

/** The day put in its place. Throws Refusal where there can be none such. */
function put(label: string, day: Day, index?: number): Transaction {
  refuseFor(problemOfDay(day))
  return {
    label,
    changes: [{ of: 'day', id: day.id, value: day, ...(index === undefined ? {} : { index }) }],
  }
}

const named = (name: string): string => name.trim() || refuseDay({ code: 'dayWithoutName' })

/** `value` without what is undefined, as a document is kept. */
export const tidied = <T extends object>(value: { readonly [K in keyof T]?: T[K] | undefined }): T =>
  Object.fromEntries(Object.entries(value).filter(([, at]) => at !== undefined)) as T

/** Some fields of a thing; undefined takes away one that it can do without. */
export type Fields<T> = { readonly [K in keyof T]?: T[K] | undefined }

/** Adds a day, last. */
export const addDay = (day: Day): Transaction =>
  put(dayLabels.add(named(day.name)), { ...day, name: named(day.name) })

/** Days from one date to another. */
const daysBetween = (from: string, to: string): number =>
  (Date.parse(`${to}T00:00Z`) - Date.parse(`${from}T00:00Z`)) / 86_400_000

const movedBy = (at: string, days: number): string =>
  `${new Date(Date.parse(`${at.slice(0, 10)}T00:00Z`) + days * 86_400_000).toISOString().slice(0, 10)}${at.slice(10)}`

/** What is held in a day, on another date: at the same clock times, as far from the day. */
const holdsOn = (before: Day, date: string): Day['holds'] =>
  before.holds.map(hold => ({ ...hold, at: movedBy(hold.at, daysBetween(before.date, date)) }))

/**
 * Plans a day like an earlier one on another date: breads, oven and kitchen as they were, what was held at the same clock
 * times as far from the day; what was measured of its mixings stays behind.
 */
export function copyDay(workbook: Workbook, id: string, date: string, name?: string): Transaction {
  const before = dayIn(workbook, id)
  const moved = { ...before, id: newId(), name: named(name ?? before.name), date }
  refuseFor(problemOfDay(moved))
  const wished = (before.mixes ?? [])
    .map(({ water: _water, room: _room, lines: _lines, ...mix }): DayMix => mix)
    .filter(({ wanted, rise }) => wanted !== undefined || rise !== undefined)
  const { mixes: _measured, ...rest } = moved
  return put(dayLabels.copy(moved.name, before.date), {
    ...rest,
    holds: holdsOn(before, date),
    ...(wished.length > 0 && { mixes: wished }),
  })
}

/** Moves a day to another date with what is held in it, by another name if one is given; undefined when it is there. */
export function moveDay(
  workbook: Workbook,
  id: string,
  date: string,
  name?: string,
): Transaction | undefined {
  const before = dayIn(workbook, id)
  if (date === before.date) return undefined
  const after = { ...before, date, name: named(name ?? before.name), holds: holdsOn(before, date) }
  return put(dayLabels.change(before.name), after)
}

export function renameDay(workbook: Workbook, id: string, name: string): Transaction | undefined {
  const before = dayIn(workbook, id)
  const wanted = named(name)
  return wanted === before.name
    ? undefined
    : put(dayLabels.rename(before.name, wanted), { ...before, name: wanted })
}

/** Says fields of a day otherwise; undefined when it is as it was. Throws Refusal for what a day cannot be. */
export function changeDay(
  workbook: Workbook,
  id: string,
  fields: Fields<Omit<Day, 'id' | 'name' | 'breads' | 'holds' | 'mixes'>>,
): Transaction | undefined {
  const before = dayIn(workbook, id)
  const after = tidied<Day>({ ...before, ...fields } as Day)
  return sameData(before, after) ? undefined : put(dayLabels.change(before.name), after)
}

/** Bakes a formula on a day, last or at `index`. Throws Refusal where it is not on the shelf. */
export function addBread(
  workbook: Workbook,
  id: string,
  bread: Omit<DayBread, 'id'>,
  index?: number,
): Transaction {
  const before = dayIn(workbook, id)
  if (!workbook.formulas.some(formula => formula.id === bread.formula))
    refuseDay({ code: 'formulaNotOnShelf' })
  const breads = [...before.breads]
  breads.splice(index ?? breads.length, 0, { ...bread, id: newId() })
  const label = dayLabels.addBread(nameOfFormula(workbook, bread.formula), before.name)
  return put(label, { ...before, breads })
}

/** Says how much of a bread is baked, when it is ready or in which oven; undefined when that is as it was. */
export function changeBread(
  workbook: Workbook,
  at: BreadAt,
  fields: Fields<Omit<DayBread, 'id' | 'formula'>>,
): Transaction | undefined {
  const day = dayIn(workbook, at.day)
  const before = breadIn(day, at.bread)
  const after = tidied<DayBread>({ ...before, ...fields } as DayBread)
  if (sameData(before, after)) return undefined
  const breads = day.breads.map(bread => (bread === before ? after : bread))
  return put(dayLabels.changeBread(nameOfFormula(workbook, before.formula), day.name), { ...day, breads })
}

/** Takes a bread off a day, with what was held and measured of it. */
export function removeBread(workbook: Workbook, at: BreadAt): Transaction {
  const day = dayIn(workbook, at.day)
  const before = breadIn(day, at.bread)
  const mixes = (day.mixes ?? []).filter(mix => mix.bread !== before.id)
  const { mixes: _before, ...rest } = day
  return put(dayLabels.removeBread(nameOfFormula(workbook, before.formula), day.name), {
    ...rest,
    breads: day.breads.filter(bread => bread !== before),
    holds: day.holds.filter(({ moment }) => !moment.startsWith(`${before.id} `)),
    ...(mixes.length > 0 && { mixes }),
  })
}

/**
 * Keeps a moment of a day, by the name that the plan gives it, at a local date and time (`2026-12-05T06:30`); `what` says in
 * words which. Undefined when it is held there already.
 */
export function holdMoment(
  workbook: Workbook,
  id: string,
  moment: string,
  at: string,
  what: string = dayLabels.aMoment,
): Transaction | undefined {
  const day = dayIn(workbook, id)
  if (day.holds.some(hold => hold.moment === moment && hold.at === at)) return undefined
  const holds = [...day.holds.filter(hold => hold.moment !== moment), { moment, at }]
  return put(dayLabels.hold(what, at.slice(11).replace(/^0/, '')), { ...day, holds })
}

/** Lets a moment of a day follow again; undefined when it does. */
export function releaseMoment(
  workbook: Workbook,
  id: string,
  moment: string,
  what: string = dayLabels.aMoment,
): Transaction | undefined {
  const day = dayIn(workbook, id)
  const holds = day.holds.filter(hold => hold.moment !== moment)
  return holds.length === day.holds.length ? undefined : put(dayLabels.release(what), { ...day, holds })
}

/**
 * Makes the stages of one name together, or each by itself again: `key` as the day keeps it, `name` in the baker's words.
 * `others` are the builds that are no more when they are made with the first; what was held of them is let go. Undefined when it
 * is so already.
 */
export function makeTogether(
  workbook: Workbook,
  id: string,
  { key, name }: { readonly key: string; readonly name: string },
  others: readonly { readonly bread: string; readonly stage: string }[] | undefined, // undefined: each by itself
): Transaction | undefined {
  const day = dayIn(workbook, id)
  if (day.together.includes(key) === (others !== undefined)) return undefined
  const rest = day.together.filter(one => one !== key)
  if (!others) return put(dayLabels.makeApart(name), { ...day, together: rest })
  const isGone = (moment: string) =>
    others.some(({ bread, stage }) => moment.startsWith(`${bread} ${stage} `))
  return put(dayLabels.makeTogether(name), {
    ...day,
    together: [...rest, key],
    holds: day.holds.filter(({ moment }) => !isGone(moment)),
  })
}

/**
 * Says or measures something of a mixing, °C; what is undefined follows again. Undefined when it is as it was. Throws Refusal for a
 * bread that is gone and for what is no temperature.
 */
export function setMix(
  workbook: Workbook,
  at: BreadAt,
  stage: string,
  fields: Fields<Omit<DayMix, 'bread' | 'stage'>>,
): Transaction | undefined {
  const day = dayIn(workbook, at.day)
  const { formula } = breadIn(day, at.bread)
  const isIt = (mix: DayMix) => mix.bread === at.bread && mix.stage === stage
  const mixes = day.mixes ?? []
  const before = mixes.find(isIt)
  const after = tidied<DayMix>({ ...(before ?? { bread: at.bread, stage }), ...fields } as DayMix)
  const { bread: _bread, stage: _stage, ...said } = after
  if (sameData(before ?? { bread: at.bread, stage }, after)) return undefined
  const isSaid = Object.keys(said).length > 0
  const others = before
    ? mixes.flatMap(mix => (mix === before ? (isSaid ? [after] : []) : [mix]))
    : [...mixes, after]
  const { mixes: _before, ...rest } = day
  const name = workbook.formulas.find(({ id }) => id === formula)?.stages.find(({ id }) => id === stage)?.name
  return put(dayLabels.mix(name ?? dayLabels.aMixing), {
    ...rest,
    ...(others.length > 0 && { mixes: others }),
  })
}

/** Clears a day away. */
export function removeDay(workbook: Workbook, id: string): Transaction {
  const label = dayLabels.remove(dayIn(workbook, id).name)
  return clearingAway(workbook, { label, changes: [{ of: 'day', id }] })
}

/** Says how far a wait of one time moves on any day, a fraction of 1; undefined: as is usual. */
export function setLeeway(leeway: number | undefined): Transaction {
  if (leeway !== undefined && !isLeeway(leeway)) throw new Refusal(dayProblem({ code: 'leewayOutOfRange' }))
  return { label: dayLabels.leeway(leeway ?? usualLeeway), changes: [{ of: 'workbook', value: { leeway } }] }
}
