/** A length of time in minutes: how long it usually is, and from and to where that matters. */
export interface Length {
  readonly least: number
  readonly usual: number
  readonly most: number
}

/** A piece of a step's text that was read: what follows it is read on. */
export interface Read<T> {
  readonly value: T
  readonly rest: string
}

const fractions: Readonly<Record<string, number>> = { '¼': 0.25, '½': 0.5, '¾': 0.75, '⅓': 1 / 3, '⅔': 2 / 3 }
const number = String.raw`\d+(?:[.,]\d+)?(?:\s?[¼½¾⅓⅔])?|[¼½¾⅓⅔]`
const dash = String.raw`\s*(?:–|—|-|(?:to|à|bis)(?!\p{L}))\s*`

const minutesIn: readonly (readonly [unit: RegExp, minutes: number])[] = [
  [/^(?:s|secs?|seconds?|secondes?)(?!\p{L})\.?/iu, 1 / 60],
  [/^(?:min|mins|minutes?|mn)(?!\p{L})\.?|^['’′]/iu, 1],
  [/^(?:h|hrs?|hours?|heures?)(?!\p{L})\.?/iu, 60],
  [/^(?:d|days?|j|jours?)(?!\p{L})\.?/iu, 24 * 60],
]

/** A number at the beginning, with a point or a comma, or with a fraction sign. */
export function readNumber(text: string): Read<number> | undefined {
  const [found] = new RegExp(`^(?:${number})`).exec(text) ?? []
  if (found === undefined) return undefined
  const [, whole = '', sign = ''] = /^([\d.,]*)\s?([¼½¾⅓⅔]?)$/.exec(found)!
  return { value: Number(whole.replace(',', '.')) + (fractions[sign] ?? 0), rest: text.slice(found.length) }
}

function readUnit(text: string): Read<number> | undefined {
  const after = text.trimStart()
  for (const [unit, minutes] of minutesIn) {
    const [found] = unit.exec(after) ?? []
    if (found !== undefined) return { value: minutes, rest: after.slice(found.length) }
  }
  return undefined
}

/** `1:30 h` and `1:30`: hours and minutes. */
function readClock(text: string): Read<number> | undefined {
  const [found, hours, minutes] = /^(\d{1,3}):([0-5]\d)(?:\s*h(?:ours?|eures?)?\b)?/i.exec(text) ?? []
  if (found === undefined) return undefined
  return { value: Number(hours) * 60 + Number(minutes), rest: text.slice(found.length) }
}

/** `30 min`, `1 h 30`, `1 h 30 min`, `90 s`, `2 d`: minutes. */
export function readTime(text: string): Read<number> | undefined {
  const clock = readClock(text)
  if (clock) return clock
  const count = readNumber(text)
  const unit = count && readUnit(count.rest)
  if (!count || !unit) return undefined
  const value = count.value * unit.value
  const [further] = /^\s*(?:and|et|und)?\s*(?=[\d½])/.exec(unit.rest) ?? []
  if (further === undefined) return { value, rest: unit.rest }
  const more = readNumber(unit.rest.slice(further.length))!
  const smaller = readUnit(more.rest)
  if (smaller && smaller.value < unit.value)
    return { value: value + more.value * smaller.value, rest: smaller.rest }
  // `1 h 30`: minutes without their unit, and nothing else that a number could be
  const isMinutes =
    unit.value === 60 && !smaller && !/^\s*(?:[×x*°%]|[CF]\b)/i.test(more.rest) && more.value < 60
  return isMinutes ? { value: value + more.value, rest: more.rest } : { value, rest: unit.rest }
}

/** `3.5–4.5 h`, `30 min to 1 h`, `12 à 15 h`, or one time: then all three are that. */
export function readLength(text: string): Read<Length> | undefined {
  const first = readTime(text)
  const low = first ?? readNumber(text)
  if (!low) return undefined
  const [between] = new RegExp(`^${dash}`, 'iu').exec(low.rest) ?? []
  const high = between === undefined ? undefined : readTime(low.rest.slice(between.length))
  if (!high) return first && { value: same(first.value), rest: first.rest }
  // `3.5–4.5 h`: the first has the unit of the second
  const unit = first ? 1 : unitOf(low.rest.slice(between!.length))
  const [a, b] = [low.value * unit, high.value]
  return { value: { least: Math.min(a, b), usual: (a + b) / 2, most: Math.max(a, b) }, rest: high.rest }
}

const same = (minutes: number): Length => ({ least: minutes, usual: minutes, most: minutes })

const unitOf = (text: string): number => {
  const count = readNumber(text)
  return (count && readUnit(count.rest)?.value) ?? 1
}
