import { clockText, lengthText, localOf } from '../course/clock.js'
import type { DayEvent } from '../course/day-network.js'
import type { DayProblem } from '../course/day-problem.js'
import type { Length } from '../method/step-time.js'
import { stepName } from '../method/words.js'
import { ovenDays } from './loads.js'
import type { PlannedDay, PlannedEvent } from './planned.js'

const ordinals = [
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
]
const folded = /\b(?:bulk|rest|rise|ferment\p{L}*|pointage|lev[ée]e)\b/iu // waits of a dough: hands come to fold it

/** `Mix`, `Bulk, first fold`, `Ripen, second time`, `Bake, load 2`. */
export function eventWords({ step, time, load }: Pick<DayEvent, 'step' | 'time' | 'load'>): string {
  const name = stepName(step)
  if (time !== undefined) {
    const what = folded.test(name) ? 'fold' : 'time'
    const ordinal = ordinals[time - 1]
    return ordinal ? `${name}, ${ordinal} ${what}` : `${name}, ${what} ${time}`
  }
  return load && load.of > 1 ? `${name}, load ${load.number}` : name
}

/** Where the working of a time begins. */
export function anchorWords(of: 'ready' | 'begin' | 'held', clock: string, what?: string): string {
  if (of === 'held') return what ? `${what} held at ${clock}` : `held at ${clock}`
  return of === 'ready' ? `ready ${clock}` : `begin ${clock}`
}

/** What lies between the end of a bread, or of one of its loads, and the time it is to be ready. */
export const beforeItsTime = 'Before its time'

/** `8–10 h`, `30–60 min`, `45 min`. */
export function boundsText({ least, most }: Length): string {
  if (most - least < 0.5) return lengthText(least)
  const inHours = least >= 60 && least % 30 === 0 && most % 30 === 0
  if (inHours) return `${least / 60}–${most / 60} h`
  return most <= 90
    ? `${Math.round(least)}–${Math.round(most)} min`
    : `${lengthText(least)}–${lengthText(most)}`
}

/** Why times of a plan are not the usual ones: the night that they touch. */
export function becauseOf({ edges, day }: PlannedDay): string {
  const clock = (instant: number) => clockText(localOf(instant, day.zone).minutes)
  const wakes = edges.find(e => e.of === 'wakes')
  if (wakes) return `nobody is up before ${clock(wakes.event.from)}`
  const sleeps = edges.find(e => e.of === 'sleeps')
  if (sleeps)
    return `nobody is up after ${clock(sleeps.event.kind === 'hands' ? sleeps.event.until : sleeps.event.from)}`
  const held = edges.find(e => e.of === 'held')
  return held ? `${eventWords(held.event)} is held at ${clock(held.event.from)}` : ''
}

/** What is said of a wait that is not as long as usual; nothing of one that is. */
export function stretchWords(event: PlannedEvent, because: string): string[] {
  const { kind, length, from, until } = event
  if (kind !== 'wait' || !length || length.most - length.least < 0.5) return []
  if (Math.abs(until - from - length.usual) < 0.5) return []
  const why = because ? `, because ${because}` : ''
  return [`${eventWords(event)} has ${lengthText(until - from)} of its ${boundsText(length)}${why}.`]
}

/** Something noticed on a day. */
export type DayRemark = { readonly breads: readonly string[]; readonly event?: string } & (
  | { readonly code: 'no method'; readonly name: string }
  | { readonly code: 'no time'; readonly step: string }
  | { readonly code: 'not read'; readonly step: string; readonly text: string }
  | { readonly code: 'no such line'; readonly step: string; readonly line: string }
  | { readonly code: 'done early'; readonly name: string; readonly minutes: number }
  | {
      readonly code: 'load not full'
      readonly name: string
      readonly pieces: number
      readonly atOnce: number
    }
  | {
      readonly code: 'scaled'
      readonly step: string
      readonly written: number
      readonly celsius: number
      readonly factor: number
      readonly extrapolated: boolean
    }
  | { readonly code: 'heats asleep'; readonly oven: string; readonly clock: string }
  | { readonly code: 'not proven'; readonly gap: number }
  | { readonly code: 'hold without a moment'; readonly moment: string }
  | { readonly code: 'formula gone' }
)

/** All that is to be said of a day beside its times. */
export function remarksOn(
  { breads, builds, dropped, missing }: DayProblem,
  plan: PlannedDay | undefined,
): DayRemark[] {
  const remarks: DayRemark[] = missing.map(id => ({ code: 'formula gone', breads: [id] }))
  for (const { id, formula, stages } of breads) {
    if (!stages.some(s => s.isFinal && s.steps.length))
      remarks.push({ code: 'no method', breads: [id], name: formula.name })
  }
  for (const { plan: stage, breads: of } of builds) {
    for (const { step, read, missing } of stage.steps) {
      const about = { breads: of, step: step.does || step.text }
      if (!read.length) remarks.push({ ...about, code: 'no time' })
      for (const text of read.notRead) remarks.push({ ...about, code: 'not read', text })
      for (const line of missing) remarks.push({ ...about, code: 'no such line', line })
    }
  }
  const seen = new Set<string>()
  for (const { breads: of, begins, scaled, step, load } of plan?.events ?? []) {
    if (load && load.number === load.of && load.of > 1 && load.pieces !== undefined && step.kind === 'bake') {
      const first = plan!.events.find(e => e.begins !== begins && e.step === step && e.load?.number === 1)
      const atOnce = first?.load?.pieces ?? load.pieces
      const { formula } = breads.find(b => b.id === of[0])!
      if (load.pieces < atOnce)
        remarks.push({
          code: 'load not full',
          breads: of,
          event: begins,
          name: formula.name,
          pieces: load.pieces,
          atOnce,
        })
    }
    if (!scaled || (scaled.factor === 1 && !scaled.extrapolated) || seen.has(begins)) continue
    seen.add(begins)
    const { written, celsius, factor, extrapolated } = scaled
    remarks.push({
      code: 'scaled',
      breads: of,
      event: begins,
      step: step.does,
      written: written!,
      celsius,
      factor,
      extrapolated,
    })
  }
  for (const { bread, minutes } of plan?.early ?? []) {
    const { formula } = breads.find(b => b.id === bread)!
    remarks.push({ code: 'done early', breads: [bread], name: formula.name, minutes })
  }
  for (const { oven, heatings } of plan ? ovenDays(plan) : []) {
    for (const { from, asleep } of heatings) {
      if (!asleep) continue
      const clock = clockText(localOf(from, plan!.day.zone).minutes)
      remarks.push({ code: 'heats asleep', breads: [], oven: oven.name, clock })
    }
  }
  if (plan && !plan.proven) remarks.push({ code: 'not proven', breads: [], gap: plan.gap })
  for (const moment of dropped) remarks.push({ code: 'hold without a moment', breads: [], moment })
  return remarks
}

const degrees = (celsius: number): string => `${Number(celsius.toFixed(1))} °C`

/** The sentence of a remark. */
export function remarkSentence(remark: DayRemark): string {
  switch (remark.code) {
    case 'no method':
      return `${remark.name} has no method for its final dough, so it has no times. Write its steps on the formula.`
    case 'no time':
      return `${remark.step} has no time and is planned as 0 min. Write one, such as 30 min.`
    case 'not read':
      return `${remark.step}: “${remark.text}” was not understood. Write a time, such as 30 min or 3.5–4.5 h, and a temperature, such as at 25 °C.`
    case 'no such line':
      return `${remark.step} adds ${remark.line}, which is not in its stage.`
    case 'done early':
      return `${remark.name} is done ${lengthText(remark.minutes)} before its time: it cannot be done at that minute.`
    case 'load not full':
      return `The last load of ${remark.name} holds ${remark.pieces} of ${remark.atOnce}.`
    case 'scaled': {
      const { step, written, celsius, factor, extrapolated } = remark
      const stands = `${step} is written for ${degrees(written)} and stands at ${degrees(celsius)}`
      const times =
        extrapolated && factor === 1
          ? 'its time there is not known'
          : `it takes ${Number(factor.toFixed(2))} times as long`
      const far = extrapolated
        ? ' Outside 14–30 °C this is only a guess: go by the dough.'
        : ' Go by the dough: volume, dome and smell.'
      return `${stands}: ${times}.${far}`
    }
    case 'heats asleep':
      return `${remark.oven} has to heat up from ${remark.clock}, when nobody is up: set its timer if it has one, or be ready later.`
    case 'not proven':
      return 'The search stopped before it had tried every order. There may be a better plan.'
    case 'formula gone':
      return 'A formula of this day is no longer on the shelf, so nothing of it is planned. Undo its deletion, or take it off the day.'
    case 'hold without a moment':
      return 'A time was held for a step that is no longer there.'
  }
}
