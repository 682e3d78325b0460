import { listed } from '../../engine/index.js'
import { clockText, lengthText, localOf } from '../course/clock.js'
import type { PlannedDay } from './planned.js'

/**
 * Which breads are done before they are to be ready, and when, in a sentence; '' where none is. `nameOf` gives a bread's name, `at`
 * says an instant: `at 8:20`, or with its date where that is another.
 */
export function earlySentence(
  { day, early, at: times }: PlannedDay,
  nameOf: (bread: string) => string,
  at: (instant: number) => string,
): string {
  const [first] = early
  if (!first) return ''
  const ready = (bread: string) => times.get(`${bread} ready`)!
  const done = ({ bread, minutes }: typeof first) => at(ready(bread) - minutes)
  if (day.breads.length === 1) {
    const clock = clockText(localOf(ready(first.bread), day.zone).minutes)
    return `It cannot be done at ${clock} itself: it is done ${done(first)}, ${lengthText(first.minutes)} before.`
  }
  const breads = early
    .toSorted((a, b) => ready(a.bread) - a.minutes - (ready(b.bread) - b.minutes))
    .map(
      (one, i) =>
        `${nameOf(one.bread)} ${done(one)} (${lengthText(one.minutes)}${i ? '' : ' before its time'})`,
    )
  return `Not everything can be done at its very minute. Done before it: ${listed(breads)}.`
}
