import { dateAfter } from '../../../src/day/course/clock.js'

const noon = (date: string): number => Date.parse(`${date}T12:00Z`)
const folded = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase()

/** The names of months or weekdays in a language, folded, Monday or January first. */
function names(language: string, part: 'month' | 'weekday'): string[] {
  const style = new Intl.DateTimeFormat(language, { [part]: 'long', timeZone: 'UTC' })
  const dates =
    part === 'month'
      ? Array.from({ length: 12 }, (_, i) => Date.UTC(2024, i, 15))
      : Array.from({ length: 7 }, (_, i) => Date.UTC(2024, 0, 1 + i)) // a Monday
  return dates.map(date => folded(style.format(date)))
}

/** Which of some names a word begins, where it is the only one. */
function among(word: string, all: readonly string[], atLeast: number): number | undefined {
  if (word.length < atLeast) return undefined
  const found = all.flatMap((name, i) => (name.startsWith(word) ? [i] : []))
  return found.length === 1 ? found[0] : undefined
}

/** What may stand in a date besides. */
const beside = /^(?:of|the|de|du|den|der|le|st|nd|rd|th|er)$/

const isoOf = (year: number, month: number, day: number): string | undefined => {
  const date = new Date(Date.UTC(year, month, day))
  return date.getUTCMonth() === month && date.getUTCDate() === day
    ? date.toISOString().slice(0, 10)
    : undefined
}

/** Whether a language writes the month before the day. */
const monthFirst = (language: string): boolean => {
  const parts = new Intl.DateTimeFormat(language, { day: 'numeric', month: 'numeric' }).formatToParts()
  return parts.findIndex(p => p.type === 'month') < parts.findIndex(p => p.type === 'day')
}

/**
 * The date of what a baker typed, `2026-12-05`: that, `5 December`, `Dec 5 2026`, `5.12.`, `Saturday`, `tomorrow`. Without a year it
 * is the next such date, or one of the last thirty days; a weekday is the next one. Undefined for anything else.
 */
export function readDate(typed: string, today: string, language: string): string | undefined {
  const text = folded(typed).trim()
  const [, y, m, d] = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text) ?? []
  if (y) return isoOf(Number(y), Number(m) - 1, Number(d))
  const relative = new Intl.RelativeTimeFormat(language, { numeric: 'auto' })
  for (const days of [0, 1, 2])
    if (text === folded(relative.format(days, 'day'))) return dateAfter(today, days)
  const words = text.match(/\p{L}+/gu) ?? []
  const numbers = (text.match(/\d+/g) ?? []).map(Number)
  const read = words.map(word => ({
    word,
    month: among(word, names(language, 'month'), 3),
    weekday: among(word, names(language, 'weekday'), 2),
  }))
  const isOdd = (w: (typeof read)[number]) =>
    w.month === undefined && w.weekday === undefined && !beside.test(w.word)
  if (read.some(isOdd)) return undefined
  // `mar.` is mardi where another word is the month, and mars where none is.
  const ofMonth =
    read.find(w => w.month !== undefined && w.weekday === undefined) ?? read.find(w => w.month !== undefined)
  const weekday = read.find(w => w.weekday !== undefined && w !== ofMonth)?.weekday
  let month = ofMonth?.month
  if (numbers.length === 0) {
    if (weekday === undefined || month !== undefined) return undefined
    const now = (new Date(noon(today)).getUTCDay() + 6) % 7
    return dateAfter(today, (weekday - now + 7) % 7 || 7)
  }
  if (month === undefined) {
    if (numbers.length < 2) return undefined
    const [first, second] = numbers.splice(0, 2) as [number, number]
    const isMonthFirst = monthFirst(language)
    month = (isMonthFirst ? first : second) - 1
    numbers.unshift(isMonthFirst ? second : first)
  }
  const [day, year, ...more] = numbers
  if (day === undefined || more.length || month < 0 || month > 11) return undefined
  if (year !== undefined) return isoOf(year < 100 ? 2000 + year : year, month, day)
  const thisYear = Number(today.slice(0, 4))
  const near = [thisYear - 1, thisYear, thisYear + 1].flatMap(of => isoOf(of, month, day) ?? [])
  return near.find(date => noon(date) >= noon(today) - 30 * 86_400_000)
}

/** A date as it is shown in a field, to be read back: `Sat 5 December`; with its year where that is not plain. */
export function dateToRead(date: string, today: string, language: string): string {
  const text = (year: boolean): string =>
    new Intl.DateTimeFormat(language, {
      weekday: 'short',
      day: 'numeric',
      month: 'long',
      timeZone: 'UTC',
      numberingSystem: 'latn',
      ...(year && { year: 'numeric' }),
    }).format(noon(date))
  const short = text(false)
  return readDate(short, today, language) === date ? short : text(true)
}
