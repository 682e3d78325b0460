import type { DaySheet } from '../../src/day/plan/open-day.js'
import { type DayRemark, remarkSentence } from '../../src/day/plan/words.js'
import { dayWords, degrees, listed, stepOf } from './words.js'

type Scaled = Extract<DayRemark, { code: 'scaled' }>

const kindOf = ({ written, celsius }: Scaled): string => `${written} ${celsius}`

/** What is to be known of a day, in sentences; what is scaled alike in one. What the day itself says above is left out. */
export function remarksSaid({ remarks, stepAt }: DaySheet): string[] {
  const others = remarks.filter(({ code }) => code !== 'scaled' && code !== 'not proven')
  const scaled = new Map<string, Scaled[]>()
  for (const remark of remarks)
    if (remark.code === 'scaled') scaled.set(kindOf(remark), [...(scaled.get(kindOf(remark)) ?? []), remark])
  return [
    ...others.map(remarkSentence),
    ...[...scaled.values()].map(alike => {
      const { written, celsius, factor, extrapolated } = alike[0]!
      const steps = [
        ...new Set(
          alike.map(({ step, event }) => {
            const stage = event === undefined ? undefined : stepAt(event)?.stageName
            return stage === undefined ? step : stepOf(step, stage)
          }),
        ),
      ]
      const times = extrapolated && factor === 1 ? undefined : String(Number(factor.toFixed(2)))
      const said = dayWords.scaled(
        listed(steps),
        degrees(written),
        degrees(celsius),
        times,
        steps.length === 1,
      )
      return `${said} ${extrapolated ? dayWords.onlyAGuess : dayWords.goByTheDough}`
    }),
  ]
}
