import type { Day } from '../document/day.js'
import {
  isCelsius,
  isClock,
  isDate,
  isLocalTime,
  isPeople,
  isZone,
  mixProblem,
  ovenProblem,
  problemOfDay,
} from '../document/day-checks.js'
import { newId } from '../document/formula.js'
import { newDay, newOven } from '../edits/fetched/day-edits.js'
import {
  type Field,
  type Fields,
  isFields,
  list,
  number,
  readFields,
  type Tell,
  text,
  texts,
  that,
} from './fields.js'
import { isBatch } from './formula-data.js'

const mostBreads = 1000

const ofText =
  (is: (value: string) => boolean): Field['read'] =>
  value =>
    typeof value === 'string' && is(value) ? value : undefined

const ofNumber =
  (is: (value: number) => boolean): Field['read'] =>
  value =>
    typeof value === 'number' && is(value) ? value : undefined

const id: Field = { read: ofText(value => /^[\w-]{1,80}$/.test(value)), must: true }
const must = (read: Field['read']): Field => ({ read, must: true })
const clock = ofText(isClock)
const celsius = ofNumber(isCelsius)
const minutes: Field = { read: number(0), usual: () => 0 }
const note: Field = { read: text, usual: () => '' }

/** A thing of a day, if it is one that can be. */
function sound<T>(value: Fields | undefined, problem: (thing: T) => unknown): Fields | undefined {
  return value && problem(value as unknown as T) === undefined ? value : undefined
}

const bread = (value: unknown, tell: Tell): Fields | undefined =>
  readFields(
    value,
    { id, formula: must(text), batch: must(that(isBatch)), ready: { read: clock }, oven: { read: text } },
    tell,
  )

const oven = (value: unknown, tell: Tell): Fields | undefined =>
  sound(
    readFields(
      value,
      {
        id,
        name: must(text),
        atOnce: { read: number(0, { above: true }) },
        between: minutes,
        change: minutes,
        heating: minutes,
      },
      tell,
    ),
    ovenProblem,
  )

const ofLine = (value: unknown): boolean =>
  isFields(value) && typeof value.line === 'string' && celsius(value.celsius) !== undefined

const mix = (value: unknown, tell: Tell): Fields | undefined =>
  sound(
    readFields(
      value,
      {
        bread: must(text),
        stage: must(text),
        wanted: { read: celsius },
        rise: { read: number(0) },
        water: { read: celsius },
        room: { read: celsius },
        lines: { read: list(item => (ofLine(item) ? item : undefined), 'line', tell) },
      },
      tell,
    ),
    mixProblem,
  )

/** Things of a day under ids of their own: of two with one id the second cannot be read. */
function apart(read: (value: unknown) => Fields | undefined): (value: unknown) => Fields | undefined {
  const seen = new Set<unknown>()
  return value => {
    const thing = read(value)
    if (!thing || seen.has(thing.id) || seen.size >= mostBreads) return undefined
    seen.add(thing.id)
    return thing
  }
}

/**
 * The day in data of which nothing is known, field by field; undefined where nothing can be made of it. What can be done
 * without, and is not understood, is left out and told; what is not known stays in it.
 */
export function readDayData(value: unknown, tell: Tell): Day | undefined {
  const usual = newDay({ name: '', date: '', zone: '' })
  const night = (item: unknown) => readFields(item, { from: must(clock), until: must(clock) }, tell)
  const hold = (item: unknown) =>
    readFields(item, { moment: must(text), at: must(ofText(isLocalTime)) }, tell)
  const day = readFields(
    value,
    {
      id: { read: at => id.read(at) ?? newId(), usual: newId },
      name: must(text),
      date: must(ofText(isDate)),
      zone: must(ofText(isZone)),
      breads: {
        read: list(
          apart(item => bread(item, tell)),
          'bread',
          tell,
        ),
        usual: () => [],
      },
      people: { read: ofNumber(isPeople) },
      ready: { read: clock },
      begin: { read: clock },
      asleep: { read: list(night, 'night', tell), usual: () => [] },
      bakers: { read: ofNumber(count => count >= 1 && Number.isFinite(count)), usual: () => usual.bakers },
      ovens: { read: ovens(tell), usual: () => [newOven('Oven')] },
      kitchen: { read: celsius, usual: () => usual.kitchen },
      fridge: { read: celsius, usual: () => usual.fridge },
      freezer: { read: celsius },
      tap: { read: celsius },
      proofer: { read: celsius },
      together: { read: texts, usual: () => [] },
      holds: { read: list(hold, 'hold', tell), usual: () => [] },
      mixes: { read: list(item => mix(item, tell), 'mixing', tell) },
      note,
    },
    tell,
  ) as Day | undefined
  return day && problemOfDay(day) === undefined ? day : undefined
}

/** The ovens that can be read; undefined where none can. */
const ovens = (tell: Tell): Field['read'] => {
  const read = list(
    apart(item => oven(item, tell)),
    'oven',
    tell,
  )
  return value => {
    const all = read(value)
    return Array.isArray(all) && all.length > 0 ? all : undefined
  }
}
