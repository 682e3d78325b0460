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

const range = (least: number, most: number): string => {
  const [from, to] = [percent(least), percent(most)]
  return from === to ? `${to} %` : `${from}–${to} %`
}

const because = (said: string, plan: PlannedDay | undefined): string => {
  const why = plan ? becauseOf(plan) : ''
  return why ? `Because ${why}, ${said}` : said.charAt(0).toUpperCase() + said.slice(1)
}

const upTo = ({ count, minutes }: MovedSaid): string => `${count === 1 ? '' : 'up to '}${lengthText(minutes)}`

/** `Because nobody is up before 6:00, four waits are up to 48 min shorter (27 % of their leeway).` Why is said where the plan is given. */
export function movedSentence(
  moved: MovedSaid,
  names: readonly string[],
  plan: PlannedDay | undefined,
): string {
  const { count, least, most, shorter } = moved
  const of = names.length ? ` of ${names.join(' and ')}` : ''
  const [waits, are, their] = count === 1 ? ['wait', 'is', 'its'] : ['waits', 'are', 'their']
  const way = shorter ? 'shorter' : 'longer'
  const said = `${numeral(count)} ${waits}${of} ${are} ${upTo(moved)} ${way} (${range(least, most)} of ${their} leeway).`
  return because(said, plan)
}

/** The same of many breads together: `…, five waits are up to 1 h shorter (8–21 % of their leeway) and nine up to 2 h longer (3–31 %).` */
export function movedAllSentence(shorter: MovedSaid, longer: MovedSaid, plan: PlannedDay): string {
  const { count, least, most } = shorter
  const [waits, their] = count === 1 ? ['wait is', 'its'] : ['waits are', 'their']
  const others = `${numeral(longer.count)} ${upTo(longer)} longer (${range(longer.least, longer.most)})`
  const said = `${numeral(count)} ${waits} ${upTo(shorter)} shorter (${range(least, most)} of ${their} leeway) and ${others}.`
  return because(said, plan)
}
