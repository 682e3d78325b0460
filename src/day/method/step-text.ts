import type { Step } from '../../dough/document/formula.js'
import { addsWord, stepPieces } from '../../dough/document/step-names.js'
import { type Length, type Read, readLength, readNumber, readTime } from './step-time.js'

/** Hands that come again within a wait. */
export interface Repeats {
  readonly times: number
  readonly minutes: number // each time
  readonly every: number // minutes from the beginning, or from the end of the last, to the next
}

/** What the text of a step says. */
export interface StepRead {
  readonly length: Length | undefined // minutes; undefined: not said
  readonly exact: boolean // typed with `=`: whoever waits, it is that
  readonly celsius: number | undefined // where it stands; the length belongs to it
  readonly inFridge: boolean // at whatever the day's fridge has
  readonly repeats: Repeats | undefined
  readonly each: boolean // the length is for one piece
  readonly atOnce: number | undefined // pieces that a load holds
  readonly adds: readonly string[] // names of lines as typed, `Water (2)` for the second of a name
  readonly notRead: readonly string[] // pieces that nothing was made of
}

/** A fridge's temperature in °C until the day says another. */
export const usualFridge = 4

type Open = { -readonly [K in keyof StepRead]: StepRead[K] }

const exactly = String.raw`\s*(?:each|apiece|chacune?|pièce)\b`
const every = /^\s*(?:every|toutes\s+les|tous\s+les|alle)\s+/i
const fridge = /^(?:in\s+(?:the\s+)?(?:fridge|refrigerator)|au\s+(?:frigo|réfrigérateur|froid))(?![\p{L}])/iu
const atDegrees =
  /^(?:at\s+|à\s+|bei\s+)?(-?\d+(?:[.,]\d+)?)\s*(?:°\s*|degrees?\s+|degrés?\s+)?([CF])(?![\p{L}])/iu
const atBare = /^(?:at|à|bei)\s+(-?\d+(?:[.,]\d+)?)\s*°(?!\s*[CF])/iu
const lasting = /^(?:for|pendant|für)\s+(?=[=\d½¼¾])/iu
/** How many go into the oven at once. */
export const together = /^(\d+)\s*(?:at\s+once|at\s+a\s+time|à\s+la\s+fois)(?![\p{L}])/iu

const toCelsius = (degrees: number, scale: string): number =>
  scale.toUpperCase() === 'F' ? ((degrees - 32) * 5) / 9 : degrees

/** `4 × 5 min every 30 min` */
function readRepeats(text: string): Read<Repeats> | undefined {
  const times = readNumber(text)
  const [sign] = (times && /^\s*(?:×|x|\*|times|fois)\s*/i.exec(times.rest)) ?? []
  if (!times || sign === undefined || !Number.isInteger(times.value) || times.value < 1) return undefined
  const minutes = readTime(times.rest.slice(sign.length))
  const [spaced] = (minutes && every.exec(minutes.rest)) ?? []
  const apart = spaced === undefined ? undefined : readTime(minutes!.rest.slice(spaced.length))
  return (
    apart && {
      value: { times: times.value, minutes: minutes!.value, every: apart.value },
      rest: apart.rest,
    }
  )
}

/** Takes one thing from the beginning of `text` into `read`; the rest, or undefined when it begins with nothing known. */
function take(text: string, read: Open): string | undefined {
  const repeats = readRepeats(text)
  if (repeats && !read.repeats) {
    read.repeats = repeats.value
    return repeats.rest
  }
  if (fridge.test(text)) {
    read.inFridge = true
    return text.replace(fridge, '')
  }
  const once = together.exec(text)
  if (once) {
    read.atOnce = Number(once[1])
    return text.slice(once[0].length)
  }
  const degrees = atDegrees.exec(text) ?? atBare.exec(text)
  if (degrees) {
    read.celsius = toCelsius(Number(degrees[1]!.replace(',', '.')), degrees[2] ?? 'C')
    return text.slice(degrees[0].length)
  }
  const timed = text.replace(lasting, '')
  const isExact = /^=\s*/.exec(timed)?.[0] ?? ''
  const length = read.length ? undefined : readLength(timed.slice(isExact.length))
  if (!length) return undefined
  read.length = length.value
  read.exact = isExact !== ''
  const [each] = new RegExp(`^${exactly}`, 'i').exec(length.rest) ?? []
  read.each = each !== undefined
  return length.rest.slice(each?.length ?? 0)
}

/**
 * Reads the text of a step: a time, then what else matters in any order, parted by commas. What cannot be read is in
 * `notRead` word for word; nothing is guessed. English and French, point or comma.
 */
export function readStep(text: string): StepRead {
  const read: Open = {
    length: undefined,
    exact: false,
    celsius: undefined,
    inFridge: false,
    repeats: undefined,
    each: false,
    atOnce: undefined,
    adds: [],
    notRead: [],
  }
  let isAdding = false
  for (const piece of stepPieces(text)) {
    let rest = piece
    for (let left = take(rest, read); left !== undefined; left = rest ? take(rest, read) : undefined) {
      rest = left.replace(/^[\s,;]+/, '')
      isAdding = false
    }
    if (!rest) continue
    const [adds] = addsWord.exec(rest) ?? []
    if (adds !== undefined || isAdding) {
      read.adds = [...read.adds, rest.slice(adds?.length ?? 0).trim()]
      isAdding = true
    } else read.notRead = [...read.notRead, rest.trim()]
  }
  return read
}

/** Where in a step that is typed in one line what is done may end. */
const ends = /\s*[,;:]\s+|\s+(?=[=\d½¼¾]|at\s|in\s+the\s|adds?\s|for\s|à\s|au\s|pendant\s|bei\s|für\s)/giu

/**
 * What is done, and what else is said of it, of a step typed in one line: `Bake, 45 min at 230 °C`, `Rest in the fridge 12 h`.
 * Undefined where it does not end in what can be read whole.
 */
export function stepInLine(line: string): { readonly does: string; readonly text: string } | undefined {
  for (const { index, 0: end } of line.matchAll(ends)) {
    const [does, text] = [line.slice(0, index).trim(), line.slice(index + end.length).trim()]
    if (!/\p{L}/u.test(does) || text === '') continue
    if (readStep(text).notRead.length === 0) return { does, text }
  }
  return undefined
}

/** A wait of one time moves by the leeway (fraction of 1) either way; a range, hands and baking do not. */
export function lengthOf({ kind }: Pick<Step, 'kind'>, read: StepRead, leeway: number): Length | undefined {
  const { length, exact } = read
  if (!length || exact || kind !== 'wait' || length.least < length.most) return length
  return { least: length.usual * (1 - leeway), usual: length.usual, most: length.usual * (1 + leeway) }
}
