import type { Worded } from '../../engine/index.js'
import { batchProblem, type DocumentProblem } from './batch-checks.js'
import type { Day, DayMix, Oven } from './day.js'
import { type DayDiagnostic, dayProblem } from './day-words.js'

/** Why there is no such day. */
export type DayProblem = Worded<DayDiagnostic> | DocumentProblem

/** Whether a text is a date of the calendar, `2026-12-05`. */
export const isDate = (text: string): boolean =>
  /^\d{4}-\d{2}-\d{2}$/.test(text) &&
  !Number.isNaN(Date.parse(`${text}T00:00Z`)) &&
  new Date(`${text}T00:00Z`).toISOString().startsWith(text) // no 31st of February

/** Whether a text is a time on the clock as a day keeps it, `8:00`. */
export const isClock = (text: string): boolean => /^(?:[01]?\d|2[0-3]):[0-5]\d$/.test(text)

/** Whether a text is a local date and time as a hold keeps it, `2026-12-05T06:30`. */
export const isLocalTime = (text: string): boolean =>
  /T\d{2}:/.test(text) && isDate(text.slice(0, 10)) && isClock(text.slice(11))

const zones = new Map<string, boolean>()

/** Whether a time zone is known here. */
export function isZone(zone: string): boolean {
  let known = zones.get(zone)
  if (known === undefined) {
    try {
      new Intl.DateTimeFormat('en', { timeZone: zone })
      known = zone !== ''
    } catch {
      known = false
    }
    zones.set(zone, known)
  }
  return known
}

/** Whether a number is a temperature of a bakehouse, °C. */
export const isCelsius = (value: number): boolean => value >= -50 && value <= 100

const isRise = (value: number): boolean => value >= 0 && value <= 50
const isMinutes = (value: number): boolean => value >= 0 && Number.isFinite(value)

/** Why there is no such oven; undefined when there can be. */
export function ovenProblem({ atOnce, between, change, heating }: Oven): DayProblem | undefined {
  if (atOnce !== undefined && !(atOnce > 0 && Number.isFinite(atOnce)))
    return dayProblem({ code: 'ovenHoldsNothing' })
  return [between, change, heating].every(isMinutes) ? undefined : dayProblem({ code: 'ovenTimeNegative' })
}

/** Why nothing such can be said of a mixing; undefined when it can. */
export function mixProblem({ wanted, rise, water, room, lines = [] }: DayMix): DayProblem | undefined {
  const said = [wanted, water, room, ...lines.map(({ celsius }) => celsius)].filter(
    value => value !== undefined,
  )
  if (!said.every(isCelsius)) return dayProblem({ code: 'temperatureOutOfRange' })
  return rise === undefined || isRise(rise) ? undefined : dayProblem({ code: 'riseOutOfRange' })
}

/** Whether a day can be made for so many people. */
export const isPeople = (count: number): boolean => Number.isInteger(count) && count >= 1 && count <= 999

/** Why a day cannot be; undefined when it can. */
export function problemOfDay(day: Day): DayProblem | undefined {
  if (!isDate(day.date)) return dayProblem({ code: 'dayDateUnknown' })
  if (!isZone(day.zone)) return dayProblem({ code: 'dayZoneUnknown' })
  const clocks = [day.ready, day.begin, ...day.breads.map(({ ready }) => ready)].filter(
    clock => clock !== undefined,
  )
  const nights = day.asleep.flatMap(({ from, until }) => [from, until])
  if (![...clocks, ...nights].every(isClock)) return dayProblem({ code: 'dayClockUnknown' })
  if (!day.holds.every(({ at }) => isLocalTime(at))) return dayProblem({ code: 'dayLocalUnknown' })
  if (!(day.bakers >= 1 && Number.isFinite(day.bakers))) return dayProblem({ code: 'dayWithoutBaker' })
  const places = [day.kitchen, day.fridge, day.freezer, day.tap, day.proofer]
  if (!places.filter(value => value !== undefined).every(isCelsius))
    return dayProblem({ code: 'temperatureOutOfRange' })
  if (day.ovens.length === 0) return dayProblem({ code: 'dayWithoutOven' })
  const first = <T>(items: readonly T[], problem: (item: T) => DayProblem | undefined) =>
    items.map(problem).find(found => found !== undefined)
  return (
    first(day.ovens, ovenProblem) ??
    first(day.mixes ?? [], mixProblem) ??
    first(day.breads, ({ batch }) => batchProblem(batch))
  )
}
