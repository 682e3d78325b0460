import { clockText, localOf } from '../course/clock.js'
import { weekdayText } from '../out/day-text.js'
import type { DaySheet } from '../plan/open-day.js'
import { nightsIn } from '../plan/planned.js'
import { boundsText, eventWords } from '../plan/words.js'
import type { Todo } from './todos.js'
import {
  earlySentence,
  type Lateness,
  latenessSentence,
  movedSaid,
  onWeekday,
  sleeplessSentence,
  todoName,
  tooLongSentence,
} from './words.js'

const longBefore = 30 // minutes before its time from which it is told
const isOther = 0.75 // minutes from which a time is called another

/** `23:43`, and with its day of the week where that is not the one of `beside`: `23:43 on Fri`. Instants. */
function clockBeside(instant: number, beside: number, zone: string, language: string): string {
  const { date, minutes } = localOf(instant, zone)
  const clock = clockText(minutes)
  return date === localOf(beside, zone).date ? clock : onWeekday(clock, weekdayText(date, language))
}

/** By how many minutes each thing still to be done moved, by its key. */
export function movedBy(before: readonly Todo[], after: readonly Todo[]): Map<string, number> {
  const was = new Map(before.map(todo => [todo.key, todo.due]))
  return new Map(
    after.flatMap(({ key, due, done }) => {
      const by = due - (was.get(key) ?? due)
      return done === undefined && Math.abs(by) > isOther ? [[key, by] as const] : []
    }),
  )
}

/** What moved of what is still to be done, in one sentence; '' where nothing did. */
export function whatMoved(
  before: readonly Todo[],
  after: readonly Todo[],
  sheet: DaySheet,
  now = after[0]?.due ?? 0,
  language = 'en',
): string {
  const all = movedBy(before, after)
  const moved = after.flatMap(todo => {
    const by = all.get(todo.key)
    return by === undefined ? [] : [{ todo, by }]
  })
  const [first, ...more] = moved
  if (!first) return ''
  const { zone } = sheet.day
  const name = todoName(first.todo, breadOf(sheet, first.todo))
  const clock = clockBeside(first.todo.due, now, zone, language)
  return movedSaid({ name, clock, by: first.by, more: more.length, most: mostOf(more.map(({ by }) => by)) })
}

const mostOf = (all: readonly number[]): number => Math.max(0, ...all.map(Math.abs))

/** The bread of a thing to do, where the day has several; otherwise ''. */
export const breadOf = (sheet: DaySheet, { event }: Pick<Todo, 'event'>): string =>
  sheet.breads.length < 2
    ? ''
    : event.breads.map(id => sheet.breads.find(bread => bread.id === id)?.formula.name ?? '').join(', ')

/** The breads that can no longer be done in their time, in a sentence each with what could give. */
export function whatIsLate(sheet: DaySheet, now: number, language = 'en'): string[] {
  const { plan, breads, day } = sheet
  if (!plan) return []
  return breads.flatMap(({ id, formula }) => {
    const ready = plan.at.get(`${id} ready`)
    const own = plan.events.filter(event => event.breads.includes(id))
    const done = Math.max(...own.map(({ until }) => until))
    if (ready === undefined || done - ready <= isOther || done <= now) return []
    const seen = new Set<string>()
    const tight = own.filter(({ kind, length, from, until, begins, time }) => {
      if (kind !== 'wait' || !length || time !== undefined || until <= now || seen.has(begins)) return false
      seen.add(begins)
      return length.most - length.least > isOther && until - from - length.least < isOther
    })
    const late: Lateness = {
      bread: formula.name,
      done: clockBeside(done, ready, day.zone, language),
      wanted: clockText(localOf(ready, day.zone).minutes),
      by: done - ready,
      tight: tight.map(({ step }) => step),
    }
    return [latenessSentence(late)]
  })
}

/** What of the rest of a day is not as it was wished: breads after their time, breads long before it, work in the hours of sleep. */
export function whatDoesNotFit(sheet: DaySheet, now: number, language = 'en'): string[] {
  const { plan, breads, day } = sheet
  if (!plan) return []
  const nights = nightsIn(plan)
  const ahead = plan.events.filter(({ kind, from }) => kind !== 'wait' && from > now + 1)
  const awake = ahead.filter(({ from }) =>
    nights.some(([begins, ends]) => from > begins + 1 && from < ends - 1),
  )
  const early = plan.early.flatMap(({ bread, minutes }) => {
    const formula = breads.find(({ id }) => id === bread)?.formula
    const ready = plan.at.get(`${bread} ready`)!
    const done = ready - minutes
    if (!formula || minutes < longBefore || done < now) return []
    return [earlySentence(formula.name, clockBeside(done, ready, day.zone, language), minutes)]
  })
  const tooLong = plan.events.flatMap(event => {
    const { kind, time, length, from, until } = event
    const isOver = kind === 'wait' && time === undefined && length && until - from > length.most + isOther
    return isOver && until > now ? [tooLongSentence(eventWords(event), until - from, boundsText(length))] : []
  })
  return [
    ...whatIsLate(sheet, now, language),
    ...early,
    ...tooLong,
    ...(awake.length ? [sleeplessSentence(awake.length)] : []),
  ]
}
