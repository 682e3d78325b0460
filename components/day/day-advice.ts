import { localOf, localText } from '../../src/day/course/clock.js'
import { readStep } from '../../src/day/method/step-text.js'
import { stepName } from '../../src/day/method/words.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import { changeBread, changeDay, holdMoment, releaseMoment } from '../../src/dough/edits/fetched/day-edits.js'
import type { Edit } from '../base/events.js'
import type { StepPlace } from '../method/to-step.js'
import { adviceWords, clockOf, stepOfBread } from './words.js'

/** A step of a formula that could say otherwise. */
export interface StepAdvice {
  readonly words: string
  readonly place: StepPlace
}

/** The steps that loads which cannot wait for each other come of, and the name of their formula; undefined where it is not that. */
export function stepsOf({
  conflict,
  breads,
}: DaySheet): { readonly steps: readonly StepAdvice[]; readonly formula: string } | undefined {
  const { loads } = conflict ?? {}
  const formula = breads.find(({ id }) => id === loads?.bread)?.formula
  if (!loads || !formula) return undefined
  const { wait, bake, stage } = loads
  const said = readStep(bake.text).atOnce === undefined ? [wait.step] : [wait.step, bake]
  return {
    formula: formula.name,
    steps: said.map(step => ({
      words: adviceWords.toStep(stepName(step), formula.name),
      place: { formula: formula.id, stage, step: step.id },
    })),
  }
}

/** A time that would do, and the edit that takes it. */
export interface Advice {
  readonly words: string
  readonly edit: Edit
}

/** What would do, each by itself, where it can be said of the day: the nearest times, then letting go of what is held. */
export function adviceOf({ day, conflict, later, breads, stepAt }: DaySheet): Advice[] {
  const named = (moment: string): string => {
    const event = stepAt(moment)
    const several = day.breads.length > 1
    const bread = several ? breads.find(b => b.id === event?.breads[0])?.formula.name : ''
    return event ? stepOfBread(event, bread ?? '') : ''
  }
  const released = (conflict?.holds ?? []).flatMap((hold): Advice[] => {
    if (hold.of !== 'held') return []
    const { moment } = hold
    const what = named(moment)
    return [
      { words: adviceWords.follow(what), edit: workbook => releaseMoment(workbook, day.id, moment, what) },
    ]
  })
  const nearer = (conflict?.nearest ?? later).flatMap(({ time, reason }): Advice[] => {
    const { date } = localOf(time, day.zone)
    const clock = clockOf(time, day)
    if (reason.of === 'held') {
      const what = named(reason.moment)
      const at = localText(localOf(time, day.zone))
      return [
        {
          words: adviceWords.hold(what, clock),
          edit: workbook => holdMoment(workbook, day.id, reason.moment, at, what),
        },
      ]
    }
    const isAlone = day.breads.length === 1
    const isOfDay = isAlone && (reason.of === 'begin' || day.breads[0]!.ready === undefined)
    if (date !== day.date && !isOfDay) return [] // a day has one date
    if (reason.of === 'begin')
      return [
        {
          words: adviceWords.begin(clock),
          edit: workbook => changeDay(workbook, day.id, { begin: clock, date }),
        },
      ]
    const name = breads.find(b => b.id === reason.bread)?.formula.name ?? ''
    return [
      {
        words: adviceWords.ready(isAlone ? '' : name, clock),
        edit: workbook =>
          isOfDay
            ? changeDay(workbook, day.id, { ready: clock, date })
            : changeBread(workbook, { day: day.id, bread: reason.bread }, { ready: clock }),
      },
    ]
  })
  return [...nearer, ...released]
}
