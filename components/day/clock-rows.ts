import { lengthText } from '../../src/day/course/clock.js'
import { lengthOf as lengthAsWritten, readStep } from '../../src/day/method/step-text.js'
import { type DayMixing, mixingsOf } from '../../src/day/mixing/day-mixings.js'
import { datesByClock } from '../../src/day/out/by-clock.js'
import { outWords } from '../../src/day/out/words.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import type { PlannedEvent } from '../../src/day/plan/planned.js'
import { boundsText, eventWords } from '../../src/day/plan/words.js'
import type { Day } from '../../src/dough/document/day.js'
import type { NumberStyle } from '../base/numbers.js'
import { showWeighed } from '../batch/weighed-text.js'
import { sayCelsius } from '../typed/typed-degrees.js'
import { clockOf, clockWords, degrees, standingWords, stepOfBread } from './words.js'

/** A thing of the day as the list shows it. */
export interface ClockRow {
  readonly key: string // its own
  readonly event: PlannedEvent
  readonly what: string // `Mix`
  readonly of: string // `Mill wheat, Levain`: the bread where the day has several, the stage where it is not the final dough
  readonly named: string // `Mix of Mill wheat`, apart from the list
  readonly time: string // `14:38`
  readonly typed: string // the time it is held at; '' where it follows
  readonly length: string // `37 min of 30–60 min`
  readonly about: string // stage, temperature, what to look for
  readonly weigh: string // what goes in
}

/** An oven to be switched on. */
export interface HeatRow {
  readonly key: string
  readonly event?: never
  readonly what: string // `Heat up Oven`
  readonly time: string
  readonly length: string
}

/** The rows of one date. */
export interface ClockDate {
  readonly date: string // `2026-12-05`
  readonly rows: readonly (ClockRow | HeatRow)[]
}

/** `4:15`, of a hold kept as `2026-12-05T04:15`. */
const heldClock = (at: string): string => at.slice(11).replace(/^0(?=\d)/, '')

/** A planned day by the clock. `now` is the day as it stands: what is held in it may not fit the plan. */
export function clockDates(sheet: DaySheet, now: Day, style: NumberStyle): ClockDate[] {
  const mixings = mixingsOf(now, bread => sheet.figures(bread))
  const dates = sheet.plan ? datesByClock(sheet.plan) : []
  return dates.map(({ date, rows }) => ({
    date,
    rows: rows.map(({ event, heats, from, until }) =>
      heats
        ? {
            key: `heats ${heats.id} ${from}`,
            what: outWords.heat(heats.name),
            time: clockOf(from, sheet.day),
            length: lengthText(until - from),
          }
        : rowOf(event, sheet, now, style, mixings),
    ),
  }))
}

function rowOf(
  event: PlannedEvent,
  sheet: DaySheet,
  now: Day,
  style: NumberStyle,
  mixings: readonly DayMixing[],
): ClockRow {
  const { begins, load, breads, from, until } = event
  const names = breads.map(id => sheet.breads.find(b => b.id === id)?.formula.name ?? '')
  const bread = now.breads.length > 1 ? names.join(', ') : ''
  const isFinal = sheet.breads.some(b => b.stages.some(p => p.isFinal && p.stage.id === event.stage))
  const held = now.holds.find(hold => hold.moment === begins)
  return {
    key: `${begins} ${load?.number ?? ''}`,
    event,
    what: eventWords(event),
    of: [bread, isFinal ? '' : event.stageName].filter(Boolean).join(', '),
    named: stepOfBread(event, bread),
    time: clockOf(from, sheet.day),
    typed: held ? heldClock(held.at) : '',
    length: lengthOf(event, until - from),
    about: [...waterOf(event, mixings, style), ...aboutOf(event)].join(' · '),
    weigh: weighOf(event, sheet, style),
  }
}

function lengthOf({ kind, length }: PlannedEvent, minutes: number): string {
  const said = lengthText(minutes)
  return kind === 'wait' && length ? clockWords.of(said, boundsText(length)) : said
}

/** How warm the water has to be that goes in at a step: `water at 27 °C for a dough of 25 °C`. */
function waterOf(
  { step, time, breads }: PlannedEvent,
  mixings: readonly DayMixing[],
  style: NumberStyle,
): string[] {
  const found = mixings.find(({ mixing, bread }) => mixing.step === step.id && bread === breads[0])
  if (!found || time !== undefined) return []
  const { liquid, celsius, wanted } = found.mixing
  return [clockWords.water(liquid, sayCelsius(celsius, style), sayCelsius(wanted, style))]
}

function aboutOf({ scaled, step, kind, load, time }: PlannedEvent): string[] {
  const { celsius } = readStep(step.text)
  const written = scaled && scaled.factor !== 1 ? lengthAsWritten(step, readStep(step.text), 0) : undefined
  return [
    ...(load?.pieces !== undefined && kind === 'bake' ? [clockWords.pieces(load.pieces)] : []),
    ...(written ? [clockWords.written(boundsText(written), degrees(scaled!.written!))] : []),
    ...(scaled && (scaled.standing !== 'kitchen' || scaled.written !== undefined)
      ? [`${standingWords[scaled.standing]}, ${degrees(scaled.celsius)}`]
      : []),
    ...(kind !== 'wait' && time === undefined && celsius !== undefined
      ? [clockWords.at(degrees(celsius))]
      : []),
    ...(step.note.trim() && time === undefined ? [step.note.trim()] : []),
  ]
}

function weighOf({ begins, load }: PlannedEvent, sheet: DaySheet, style: NumberStyle): string {
  if (load && load.number > 1) return '' // it went in for all loads at the first
  return sheet
    .weighList(begins)
    .map(({ ingredient, weighed }) =>
      weighed === undefined ? ingredient : `${ingredient} ${showWeighed(weighed, style)}\u00a0g`,
    )
    .join(', ')
}
