import type { Span } from './lengths.js'

/** A temperature that a sentence says. */
export interface SaidHeat extends Span {
  readonly celsius: number
  readonly text: string // as a step has it: `at 230 °C`, in French `à 230 °C`
  readonly isRange?: true // the middle of two
  readonly isMark?: true // a mark on an oven's knob
}

const degrees =
  /(?<![\d.,/])(-?\d{1,3})(?:[.,]\d+)?(?:\s*(?:°\s*[cf]?)?\s*(?:-|to\b|or\b|a\b|et\b|\/)\s*(\d{1,3}))?\s*(?:°\s*([cf])?(?![a-z])|degr?e{1,2}s?\s*(?:(c|f)(?![a-z])|celsius|fahrenheit)?|([cf])(?![a-z]))/g
const marks =
  /\b(?:gas\s*(?:mark)?|th(?:ermostat)?\.?)\s*(\d{1,2})(?:\s*(?:-|to|a|\/)\s*(\d{1,2}))?(?![\d°]|\s*(?:°|h\b|min))/g

/** What a gas mark of British ovens means in °C: 1 is 140, and each of the next 10 or so more, as its makers print it. */
const gas = [0, 140, 150, 160, 180, 190, 200, 220, 230, 240, 260]
// A temperature of the crumb is none of the oven.
const inside = /\b(?:internal(?:\s+temp(?:erature)?)?|core|inside|reads?|registers|a\s+coeur)\b[^,.;]*$/
const most = 330 // °C that an oven has

const toCelsius = (value: number, scale: string | undefined): number =>
  scale === 'f' ? ((value - 32) * 5) / 9 : value

/** The temperatures that a sentence says, in their order; one that is said in two scales is there once, in °C. */
export function heatsIn(plain: string, word: 'at' | 'à'): SaidHeat[] {
  const found: SaidHeat[] = []
  for (const match of plain.matchAll(degrees)) {
    const scaleSaid = match[3] ?? match[4] ?? match[5]
    if (inside.test(plain.slice(Math.max(0, match.index - 36), match.index))) continue
    const low = Number(match[1])
    const high = match[2] === undefined ? low : Number(match[2])
    // bare degrees of an oven above 300 are Fahrenheit
    const scale = scaleSaid ?? (/fahrenheit/.test(match[0]) || low > most ? 'f' : 'c')
    const middle = (low + high) / 2
    const celsius = toCelsius(middle, scale)
    if (celsius < -30 || celsius > most || Math.abs(high - low) > 100) continue
    found.push({
      from: match.index,
      to: match.index + match[0].length,
      celsius,
      text: `${word} ${middle} °${scale.toUpperCase()}`,
      ...(high !== low && { isRange: true as const }),
    })
  }
  for (const match of plain.matchAll(marks)) {
    const isGas = match[0].startsWith('gas')
    const of = (mark: string) =>
      isGas ? gas[Number(mark)] : Number(mark) <= 10 ? Number(mark) * 30 : undefined
    const [low, high] = [of(match[1]!), match[2] === undefined ? of(match[1]!) : of(match[2])]
    if (!low || !high) continue
    const celsius = (low + high) / 2
    found.push({
      from: match.index,
      to: match.index + match[0].length,
      celsius,
      text: `${word} ${celsius} °C`,
      isMark: true,
    })
  }
  return onlyOnce(
    found.sort((a, b) => a.from - b.from),
    plain,
  )
}

/** `230 °C (450 °F, gas mark 8)`: one temperature, as its degrees Celsius have it. */
function onlyOnce(found: readonly SaidHeat[], plain: string): SaidHeat[] {
  const kept: SaidHeat[] = []
  for (const heat of found) {
    const before = kept.at(-1)
    const isBeside =
      before && /^[\s(/,;=.]*(?:or|ou|soit)?\s*(?:-|–)?\s*$/.test(plain.slice(before.to, heat.from))
    if (!before || !isBeside || Math.abs(before.celsius - heat.celsius) > 16) kept.push(heat)
    else {
      const isBetter = rank(heat) > rank(before)
      kept[kept.length - 1] = { ...(isBetter ? heat : before), from: before.from, to: heat.to }
    }
  }
  return kept
}

const rank = ({ isMark, text }: SaidHeat): number => (isMark ? 0 : text.endsWith('F') ? 1 : 2)

// From something to work in: `remove from the fridge` is none.
const cold =
  /\b(?:in|into|to|inside)\s+(?:(?:the|a|your)\s+)?(?:fridge|refrigerator|cold(?:\s+(?:room|retarder))?(?=\s*(?:[,.;:)]|$|for\b|over\b|until\b|at\b|\d))|retarder)|\b(?:refrigerat(?:e|ed|or)|fridge)\b|\b(?:au|dans\s+(?:le|un))\s+(?:frigo|refrigerateur|froid)\b/g
const outOf = /\b(?:from|out\s+of|du|hors\s+du)\s+(?:(?:the|your)\s+)?$/

/** Where a sentence says that something stands in the fridge. */
export const fridgesIn = (plain: string): Span[] =>
  [...plain.matchAll(cold)]
    .filter(({ index, 0: words }) => {
      const before = plain.slice(Math.max(0, index - 24), index)
      const isFrom =
        outOf.test(before) || (/^(?:fridge|refrigerator)/.test(words) && /\b(?:the|a|your)\s+$/.test(before))
      return !isFrom
    })
    .map(({ index, 0: words }) => ({ from: index, to: index + words.length }))
