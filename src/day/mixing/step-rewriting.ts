import { readStep, type StepRead } from '../method/step-text.js'
import { type Length, readLength } from '../method/step-time.js'

/** A time as a step has it: `45 min`, `6 h 35`; whole hours and minutes, however long. */
function timeTyped(minutes: number): string {
  const whole = Math.round(minutes)
  const [hours, rest] = [Math.floor(whole / 60), whole % 60]
  if (!hours) return `${rest} min`
  return rest ? `${hours} h ${String(rest).padStart(2, '0')}` : `${hours} h`
}

/** To five minutes; under an hour to one. */
const rounded = (minutes: number): number =>
  minutes < 60 ? Math.max(1, Math.round(minutes)) : Math.round(minutes / 5) * 5

/** A length as it is typed: one time, or from and to with its middle where the usual is. */
function lengthTyped({ least, usual, most }: Length): string {
  if (most - least < 0.5) return timeTyped(rounded(usual))
  const from = rounded(least)
  const to = Math.max(from + 1, rounded(2 * usual - from))
  if (to < 60) return `${from}–${to} min`
  return from % 30 === 0 && to % 30 === 0
    ? `${from / 60}–${to / 60} h`
    : `${timeTyped(from)}–${timeTyped(to)}`
}

const allBut = ({ length: _length, ...rest }: StepRead): string => JSON.stringify(rest)

/** The text of a step with another length in place of its own, all else as it is typed; unchanged where it has none. */
export function withLength(text: string, length: Length): string {
  const before = readStep(text)
  const typed = lengthTyped(length)
  for (const { index } of text.matchAll(/(?<![\p{L}\d.,])[\d¼½¾⅓⅔]/gu)) {
    const own = readLength(text.slice(index))
    if (!own) continue
    const after = `${text.slice(0, index)}${typed}${own.rest}`
    const read = readStep(after)
    if (read.length && allBut(read) === allBut(before) && isNear(read.length.usual, length.usual))
      return after
  }
  return text
}

const isNear = (a: number, b: number): boolean => Math.abs(a - b) <= Math.max(2.6, b / 50)
