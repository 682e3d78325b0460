import { type Bake, minutesOf } from '../../src/day/bench/bake.js'
import type { Bench } from '../../src/day/bench/bench-day.js'
import { cutShort, waitsBefore } from '../../src/day/bench/cut-short.js'
import type { BenchNow, Todo } from '../../src/day/bench/todos.js'
import type { Happened } from '../../src/day/course/around-now.js'
import { lengthText } from '../../src/day/course/clock.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import { eventWords } from '../../src/day/plan/words.js'
import { listed } from '../../src/engine/index.js'
import { atBenchWords } from './words.js'

/** What is asked before something is done that was perhaps not meant. */
export interface Question {
  readonly words: string
  readonly goOn: string
}

/** Asked before a thing is begun, or with the ingredients that are not ticked off is done; nothing where all is as it should be. */
export function questionsBefore(
  sheet: DaySheet,
  bench: BenchNow,
  happened: Happened,
  todo: Todo,
  now: number,
  left: readonly string[] = [],
): Question[] {
  const short = todo.begun === undefined ? cutShort(sheet, bench, happened, todo, now) : []
  return [
    ...(left.length
      ? [{ words: atBenchWords.notTicked(listed([...new Set(left)])), goOn: atBenchWords.doneAnyway }]
      : []),
    ...short.map(({ event, until }) => ({
      words: atBenchWords.endsShort(event.stageName, eventWords(event), lengthText(Math.floor(until - now))),
      goOn: atBenchWords.endsNow,
    })),
  ]
}

/** Asked before all of it is ended while timers still run. */
export function questionsBeforeEnd({ bakes }: Bench, now: number): Question[] {
  const running = bakes.flatMap(({ timers }) => timers).filter(({ ends }) => minutesOf(ends) > now)
  if (running.length === 0) return []
  return [{ words: atBenchWords.stillRuns(running.map(({ name }) => name)), goOn: atBenchWords.finishAnyway }]
}

/** Whether work on a thing has begun, or something was weighed for it. */
export const isBegunAt = (bakes: readonly Bake[], { begun, event }: Todo): boolean =>
  begun !== undefined || bakes.some(({ weighed }) => weighed.some(({ moment }) => moment === event.begins))

/** What is written at a step to go by; of a wait that is by what to see its end, and stands where it is to end. */
export function hintsOf(sheet: DaySheet, happened: Happened, todo: Todo): string[] {
  const { event, act } = todo
  const own = event.kind === 'wait' ? '' : event.step.note.trim()
  const waits = act === 'out' || act === 'on' ? [] : waitsBefore(sheet, happened, todo)
  const signs = waits.flatMap(wait =>
    wait.step.note.trim() ? [atBenchWords.sign(eventWords(wait), wait.step.note.trim())] : [],
  )
  return [...signs, ...(own ? [own] : [])]
}
