import { clockText, instantOf, localOf, readClock, readLocal } from '../../../src/day/course/clock.js'
import { nearestDate } from '../../../src/day/plan/open-day.js'
import type { Choice } from './tb-bench-choices.js'
import type { TbNumberPad } from './tb-number-pad.js'
import { timeWords } from './words.js'

const offers = [5, 10, 15, 30, 60] // minutes

/** Of what times are chosen, and what is done with the one that is. Instants: minutes since 1970, UTC. */
export interface TimesOffered {
  readonly near: number
  readonly zone: string
  readonly take: (instant: number) => void
  readonly pad: () => TbNumberPad // where a time on the clock is typed
}

/** So many minutes later, or at a time on the clock. */
export const laterChoices = (of: TimesOffered): Choice[] => [
  ...offers.map(minutes => ({
    words: timeWords.minutes(minutes),
    run: () => of.take(of.near + minutes),
  })),
  atAClock(of),
]

/** So many minutes ago, or at a time on the clock. */
export const earlierChoices = (of: TimesOffered): Choice[] => [
  ...offers.map(minutes => ({ words: timeWords.ago(minutes), run: () => of.take(of.near - minutes) })),
  atAClock(of),
]

function atAClock({ near, zone, take, pad }: TimesOffered): Choice {
  const read = (typed: string): string | undefined => {
    const minutes = readClock(typed)
    if (minutes === undefined) return timeWords.notAClock(typed)
    take(instantOf(readLocal(nearestDate(near, minutes, zone))!, zone))
    return undefined
  }
  const was = clockText(localOf(near, zone).minutes)
  const asked = { title: timeWords.clockTitle, unit: '', was, kind: 'clock', take: read } as const
  return { words: timeWords.clock, run: () => void pad().ask(asked) }
}
