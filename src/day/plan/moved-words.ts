import type { PlannedDay } from './planned.js'
import { becauseOf } from './words.js'

const counts = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten']

const percent = (part: number): number => Math.round(part * 100)

/** `Because nobody is up before 6:00, four waits are 27 % of their leeway shorter.` Why is said where the plan is given. */
export function movedSentence(
  {
    count,
    least,
    most,
    shorter,
  }: { readonly count: number; readonly least: number; readonly most: number; readonly shorter: boolean },
  names: readonly string[],
  plan: PlannedDay | undefined,
): string {
  const many = counts[count] ?? String(count)
  const [from, to] = [percent(least), percent(most)]
  const part = from === to ? `${to} %` : `${from}–${to} %`
  const of = names.length ? ` of ${names.join(' and ')}` : ''
  const [waits, their] = count === 1 ? ['wait', 'its'] : ['waits', 'their']
  const said = `${many} ${waits}${of} ${count === 1 ? 'is' : 'are'} ${part} of ${their} leeway ${shorter ? 'shorter' : 'longer'}.`
  const why = plan ? becauseOf(plan) : ''
  return why ? `Because ${why}, ${said}` : said.charAt(0).toUpperCase() + said.slice(1)
}
