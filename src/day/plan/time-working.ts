import { clockText, lengthText, localOf } from '../course/clock.js'
import type { DayProblem } from '../course/day-problem.js'
import type { PlannedDay, PlannedEvent } from './planned.js'
import { anchorWords, becauseOf, beforeItsTime, eventWords, stretchWords } from './words.js'

/** A length that a time was worked out from. */
export interface TimePart {
  readonly words: string // `Bake`
  readonly minutes: number
  readonly moment: string | undefined // at which it begins; undefined: it is no step
}

/** How a time of the day came about. */
export interface TimeWorking {
  readonly title: string // `Mix 14:38`
  readonly anchor: string // `ready 9:00`: the time that was typed
  readonly after: boolean // worked out forward from it, not back
  readonly parts: readonly TimePart[] // from the anchor on
  readonly words: string // `ready 9:00 − baking 45 min − …`
  readonly because: readonly string[] // `Levain ripens 8 h 27 of its 8–10 h, because nobody is up before 6:00.`
}

/** The events from one on, each beginning when the one before it ends or is taken. */
function chain(plan: PlannedDay, written: DayProblem, start: PlannedEvent): PlannedEvent[] {
  const events: PlannedEvent[] = []
  const main = plan.events.filter(e => e.time === undefined)
  for (let at: PlannedEvent | undefined = start; at && !events.includes(at); ) {
    events.push(at)
    const next = nextMoment(written, at)
    // Where loads part, the last of them is the one that is ready in time.
    const after: PlannedEvent | undefined = main.findLast(
      e => e.begins === next && (!e.load || !at!.load || e.load.number === at!.load.number),
    )
    if (after?.held) {
      events.push(after)
      break
    }
    at = after
  }
  return events
}

function nextMoment({ network }: DayProblem, { begins, ends, breads }: PlannedEvent): string | undefined {
  if (ends !== undefined) return ends
  const taken = network.reasons.findIndex(
    r => r.of === 'ripe' && r.event.begins === begins && breads.includes(r.taker),
  )
  return taken < 0 ? undefined : network.spans[taken]!.to
}

/** The event that ends, or is taken, where one begins. */
function before(plan: PlannedDay, written: DayProblem, event: PlannedEvent): PlannedEvent | undefined {
  return plan.events.find(e => e.time === undefined && e !== event && nextMoment(written, e) === event.begins)
}

/** How the beginning of an event came about: back from when its bread is ready, or forward from the day's beginning. */
export function workingOf(plan: PlannedDay, written: DayProblem, event: PlannedEvent): TimeWorking {
  const { zone } = plan.day
  const clock = (instant: number) => clockText(localOf(instant, zone).minutes)
  const title = `${eventWords(event)} ${clock(event.from)}`
  if (event.held)
    return {
      title,
      anchor: anchorWords('held', clock(event.from)),
      after: false,
      parts: [],
      words: '',
      because: [],
    }
  const host = event.time === undefined ? event : (hostOf(plan, event) ?? event)
  const forward = chain(plan, written, host)
  const last = forward.at(-1)!
  const isHeld = last !== host && last.held
  const ready = plan.at.get(`${host.breads[0]} ready`)
  const part = (e: PlannedEvent, minutes: number): TimePart => ({
    words: eventWords(e),
    minutes,
    moment: e.begins,
  })
  if (isHeld || ready !== undefined) {
    const whole = isHeld ? forward.slice(0, -1) : forward
    const parts = whole
      .map((e, i) => part(e, (whole[i + 1]?.from ?? (isHeld ? last.from : e.until)) - e.from))
      .reverse()
    const from = event.from - host.from
    if (from > 0) parts.push({ ...part(host, -from) })
    const early = isHeld ? 0 : ready! - whole.at(-1)!.until
    if (early > 0.5) parts.unshift({ words: beforeItsTime, minutes: early, moment: undefined })
    const anchor = isHeld
      ? anchorWords('held', clock(last.from), eventWords(last))
      : anchorWords('ready', clock(ready!))
    return written_(title, anchor, false, parts, whole, plan)
  }
  const back: PlannedEvent[] = []
  for (let at = before(plan, written, host); at && !back.includes(at); at = before(plan, written, at)) {
    back.unshift(at)
    if (at.held) break
  }
  const first = back[0] ?? host
  const parts = back.map((e, i) => part(e, (back[i + 1]?.from ?? host.from) - e.from))
  if (event !== host) parts.push(part(host, event.from - host.from))
  const anchor = first.held
    ? anchorWords('held', clock(first.from), eventWords(first))
    : anchorWords('begin', clock(first.from))
  return written_(title, anchor, true, parts, back, plan)
}

/** The wait within which hands come. */
const hostOf = (plan: PlannedDay, event: PlannedEvent): PlannedEvent | undefined =>
  plan.events.find(
    e => e.time === undefined && e.step === event.step && event.begins.startsWith(`${e.begins} time `),
  )

function written_(
  title: string,
  anchor: string,
  after: boolean,
  parts: readonly TimePart[],
  events: readonly PlannedEvent[],
  plan: PlannedDay,
): TimeWorking {
  const signed = parts.map(({ words, minutes }) => {
    const sign = after === minutes >= 0 ? '+' : '−'
    return ` ${sign} ${words.toLowerCase()} ${lengthText(Math.abs(minutes))}`
  })
  const because = events.flatMap(event => stretchWords(event, becauseOf(plan)))
  return { title, anchor, after, parts, words: `${anchor}${signed.join('')}`, because }
}
