import type { DaySheet } from '../../src/day/plan/open-day.js'
import { type DayRemark, remarkSentence } from '../../src/day/plan/words.js'

const saidElsewhere: ReadonlySet<DayRemark['code']> = new Set(['scaled', 'done early', 'not proven'])

/** What is to be known of a day, in sentences; what the day itself says above, or its waits say of themselves, is left out. */
export const remarksSaid = ({ remarks }: DaySheet): string[] =>
  remarks.filter(({ code }) => !saidElsewhere.has(code)).map(remarkSentence)
