import { clockText, lengthText, localOf } from '../course/clock.js'
import type { PlannedDay } from './planned.js'

/** Which breads are done before they are to be ready. */
export interface EarlySaid {
  readonly fits: string // that it does, and how
  readonly breads: readonly string[] // each with when it is out of the oven, the earliest first
}

/**
 * Which breads are done before they are to be ready, and when; undefined where none is. `nameOf` gives a bread's name, `at` says an
 * instant: `at 8:20`, or with its date where that is another.
 */
export function earlySaid(
  { day, early, at: times, events }: PlannedDay,
  nameOf: (bread: string) => string,
  at: (instant: number) => string,
): EarlySaid | undefined {
  const [first] = early
  if (!first) return undefined
  const ready = (bread: string) => times.get(`${bread} ready`)!
  const said = early
    .map(({ bread, minutes }) => {
      const outs = events.flatMap(e => (e.kind === 'bake' && e.breads.includes(bread) ? [e.until] : []))
      const done = ready(bread) - minutes
      const out = outs.length ? Math.max(...outs) : undefined
      const early = `${lengthText(minutes)} before its time`
      const words =
        out === undefined
          ? `done ${at(done)}, ${early}`
          : done - out < 0.5
            ? `out of the oven ${at(out)}, ${early}`
            : `out of the oven ${at(out)}, done ${early}`
      return { done, words: `${nameOf(bread)}: ${words}.` }
    })
    .sort((a, b) => a.done - b.done)
  const clock = clockText(localOf(ready(first.bread), day.zone).minutes)
  const fits =
    day.breads.length === 1
      ? `All of it fits, though the bread cannot be done just at ${clock}: it is done before.`
      : 'All of it fits, though not every bread can be done just at its time: those named below are done before it.'
  return { fits, breads: said.map(({ words }) => words) }
}
