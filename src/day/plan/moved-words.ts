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

/** `Because nobody is up before 6:00, four waits are 27 % of their leeway shorter.` Why is said where the plan is given. */
export function movedSentence(
  { count, least, most, shorter }: MovedSaid,
  names: readonly string[],
  plan: PlannedDay | undefined,
): string {
  const of = names.length ? ` of ${names.join(' and ')}` : ''
  const [waits, their] = count === 1 ? ['wait', 'its'] : ['waits', 'their']
  const said = `${numeral(count)} ${waits}${of} ${count === 1 ? 'is' : 'are'} ${range(least, most)} of ${their} leeway ${shorter ? 'shorter' : 'longer'}.`
  return because(said, plan)
}

/** The same of many breads together: `…, five waits are 8–21 % of their leeway shorter and nine 3–31 % longer.` */
export function movedAllSentence(shorter: MovedSaid, longer: MovedSaid, plan: PlannedDay): string {
  const { count, least, most } = shorter
  const [waits, their] = count === 1 ? ['wait is', 'its'] : ['waits are', 'their']
  const said = `${numeral(count)} ${waits} ${range(least, most)} of ${their} leeway shorter and ${numeral(longer.count)} ${range(longer.least, longer.most)} longer.`
  return because(said, plan)
}
