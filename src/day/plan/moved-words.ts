import { lengthText } from '../course/clock.js'
import type { PlannedDay } from './planned.js'
import { becauseOf } from './words.js'

const counts = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten']

const numeral = (count: number): string => counts[count] ?? String(count)

const percent = (part: number): number => Math.round(part * 100)

/** Waits that are all shorter than usual, or all longer. */
export interface MovedSaid {
  readonly count: number
  readonly least: number // parts of their leeway, fractions of 1
  readonly most: number
  readonly minutes: number // by which the one that moved furthest did
  readonly shorter: boolean
}

const isAtLimit = 0.495 // of the leeway; half of it is as far as a wait can be from its usual

/** By how much, where all moved by the same part; whether one can move no further, where they did not. */
function howFar({ count, least, most, shorter }: MovedSaid): string {
  if (percent(least) === percent(most))
    return ` (${percent(most)} % of the time between ${count === 1 ? 'its' : 'their'} shortest and longest)`
  return most < isAtLimit ? '' : `, at least one of them as ${shorter ? 'short' : 'long'} as its step allows`
}

const because = (said: string, plan: PlannedDay | undefined): string => {
  const why = plan ? becauseOf(plan) : ''
  return why ? `Because ${why}, ${said}` : said.charAt(0).toUpperCase() + said.slice(1)
}

const upTo = ({ count, minutes }: MovedSaid): string => `${count === 1 ? '' : 'up to '}${lengthText(minutes)}`

/** `Because nobody is up before 6:00, four waits are up to 48 min shorter than usual (27 % of the time between their shortest and longest).` Why is said where the plan is given. */
export function movedSentence(
  moved: MovedSaid,
  names: readonly string[],
  plan: PlannedDay | undefined,
): string {
  const { count, shorter } = moved
  const of = names.length ? ` of ${names.join(' and ')}` : ''
  const [waits, are] = count === 1 ? ['wait', 'is'] : ['waits', 'are']
  const way = shorter ? 'shorter' : 'longer'
  return because(
    `${numeral(count)} ${waits}${of} ${are} ${upTo(moved)} ${way} than usual${howFar(moved)}.`,
    plan,
  )
}

/** The same of many breads together: `…, five waits are up to 1 h shorter than usual and nine are up to 2 h longer.` */
export function movedAllSentence(shorter: MovedSaid, longer: MovedSaid, plan: PlannedDay): string {
  const waits = shorter.count === 1 ? 'wait is' : 'waits are'
  const others = `${numeral(longer.count)} ${longer.count === 1 ? 'is' : 'are'} ${upTo(longer)} longer`
  return because(
    `${numeral(shorter.count)} ${waits} ${upTo(shorter)} shorter than usual and ${others}.`,
    plan,
  )
}
