import { minutesOf } from '../../../src/day/bench/bake.js'
import { clockText, lengthText, localOf } from '../../../src/day/course/clock.js'
import { timerWords } from './words.js'

/** `18:49` of an instant, until the next minute begins. */
export const clockCut = (instant: number, zone: string): string =>
  clockText(Math.floor(localOf(instant, zone).minutes + 1e-6))

/** `12:05` of minutes that are left, `1 h 05` from an hour on; `over for 5 min` where they are past. */
export function timerText(left: number): string {
  if (left <= 0) return left > -1 ? timerWords.overNow : timerWords.over(lengthText(Math.floor(-left)))
  const seconds = Math.ceil(left * 60 - 0.5) // an end is kept to the second: 7 min begin with 7:00
  return left >= 60
    ? lengthText(Math.ceil(left))
    : `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`
}

/** Of timers, those that have run out. `now`: minutes since 1970, UTC. */
export const runOut = <T extends { readonly ends: string }>(timers: readonly T[], now: number): T[] =>
  timers.filter(({ ends }) => minutesOf(ends) <= now)
