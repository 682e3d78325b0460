/*
 * Clock times and instants. Instants are minutes since 1970 in UTC, so that lengths stay true over a change of clocks and
 * the end of a year; only here are they turned into the local time of a zone and back.
 */

const formats = new Map<string, Intl.DateTimeFormat>()

function formatIn(zone: string): Intl.DateTimeFormat {
  let format = formats.get(zone)
  if (!format) {
    format = new Intl.DateTimeFormat('en-GB-u-ca-iso8601-nu-latn', {
      timeZone: zone,
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      second: '2-digit',
      hourCycle: 'h23',
    })
    formats.set(zone, format)
  }
  return format
}

const minute = 60_000
const day = 24 * 60

/** A local date with a clock time. */
export interface Local {
  readonly date: string // `2026-12-05`
  readonly minutes: number // of the clock since midnight; real
}

/** Local date and clock time of an instant. Throws RangeError for a zone that is not known. */
export function localOf(instant: number, zone: string): Local {
  const whole = Math.floor(instant)
  const parts = Object.fromEntries(
    formatIn(zone)
      .formatToParts(whole * minute)
      .map(({ type, value }) => [type, value]),
  )
  const { year, month, day: of, hour, minute: past } = parts
  return { date: `${year}-${month}-${of}`, minutes: Number(hour) * 60 + Number(past) + (instant - whole) }
}

/** Minutes that the zone's clock is ahead of UTC at an instant. */
export function offsetAt(instant: number, zone: string): number {
  const whole = Math.floor(instant)
  const { date, minutes } = localOf(whole, zone)
  return Date.parse(`${date}T00:00Z`) / minute + minutes - whole
}

/**
 * The instant of a clock time. A time that comes twice, when clocks go back, is the first of the two; one that is
 * left out, when they go forward, is as long after midnight as it says: 2:30 becomes 3:30.
 */
export function instantOf({ date, minutes }: Local, zone: string): number {
  const asUtc = Date.parse(`${date}T00:00Z`) / minute + minutes
  const before = offsetAt(asUtc - day, zone)
  const after = offsetAt(asUtc + day, zone)
  const [early, late] = [asUtc - before, asUtc - after]
  if (offsetAt(early, zone) === before) return early
  return offsetAt(late, zone) === after ? late : early
}

/** The date so many days later. */
export const dateAfter = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00Z`) + days * day * minute).toISOString().slice(0, 10)

const clock =
  /^\s*(?<hours>\d{1,2})(?:\s*[:.,h]\s*(?<minutes>[0-5]\d)?|(?<bare>[0-5]\d))?\s*h?\s*(?:(?<half>[ap])\.?\s?m\.?)?\s*$/i

/** Minutes since midnight of `8:00`, `08:30`, `8.30`, `8h30`, `830`, `8` or `8:30 pm`; undefined for anything else. */
export function readClock(text: string): number | undefined {
  const { hours, minutes, bare, half } = clock.exec(text)?.groups ?? {}
  const hour = Number(hours)
  if (hours === undefined || hour > 23 || (half && (hour < 1 || hour > 12))) return undefined
  const of24 = half ? (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0) : hour
  return of24 * 60 + Number(minutes ?? bare ?? 0)
}

/** `8:00`, `22:30`, of minutes since midnight, to the nearest minute. */
export function clockText(minutes: number): string {
  const whole = ((Math.round(minutes) % day) + day) % day
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`
}

/** Local date and time as a day's holds keep it: `2026-12-05T06:30`. */
export function localText({ date, minutes }: Local): string {
  const whole = Math.round(minutes)
  const on = dateAfter(date, Math.floor(whole / day))
  return `${on}T${clockText(whole).padStart(5, '0')}`
}

/** The same back; undefined where the text is no such. */
export function readLocal(text: string): Local | undefined {
  const [, date, clock] = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2})$/.exec(text) ?? []
  const minutes = clock === undefined ? undefined : readClock(clock)
  if (minutes === undefined || Number.isNaN(Date.parse(`${date}T00:00Z`))) return undefined
  return { date: date!, minutes }
}

/** `13 h 30`, `45 min`, `2 d 3 h`, `1.5 min` of a length in minutes. */
export function lengthText(minutes: number): string {
  if (minutes < 0) return `−${lengthText(-minutes)}`
  if (minutes < 10 && Math.abs(minutes - Math.round(minutes)) > 0.05) return `${minutes.toFixed(1)} min`
  const whole = Math.round(minutes)
  const [days, hours, rest] = [Math.floor(whole / day), Math.floor((whole % day) / 60), whole % 60]
  if (days) return [`${days} d`, hours && `${hours} h`, rest && `${rest} min`].filter(Boolean).join(' ')
  if (!hours) return `${rest} min`
  return rest ? `${hours} h ${String(rest).padStart(2, '0')}` : `${hours} h`
}
