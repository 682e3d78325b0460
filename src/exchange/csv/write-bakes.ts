import { type Bake, type FigureName, figureNames, minutesOf, tasteNames } from '../../day/bench/bake.js'
import type { BakeRecord, StepRecord } from '../../day/bench/bake-record.js'
import { localOf, localText } from '../../day/course/clock.js'
import { figureOf } from '../../day/learning/lessons.js'
import { writeTable } from './csv-table.js'

/** A bake with what is kept of it. */
export interface BakeWritten {
  readonly bake: Bake
  readonly record: BakeRecord
}

/** What each figure is measured in, as the headings say. */
const units: Readonly<Record<FigureName, string>> = {
  flour: 'flour °C',
  water: 'water °C',
  room: 'room °C',
  dough: 'dough °C',
  oven: 'oven °C',
  rise: 'rise %',
  pH: 'pH',
  raw: 'piece raw g',
  baked: 'piece baked g',
}

const number = (value: number | undefined, digits = 3): string =>
  value === undefined ? '' : String(Number(value.toFixed(digits)))

/** `2026-12-05 06:30` on the clock where it was baked. */
const when = (instant: number | undefined, zone: string): string =>
  instant === undefined ? '' : localText(localOf(Math.round(instant), zone)).replace('T', ' ')

const grams = ({ weights }: BakeRecord): number | undefined => {
  const all = weights.flatMap(one => one.grams ?? [])
  return all.length ? all.reduce((sum, one) => sum + one, 0) : undefined
}

/** Bakes as CSV (RFC 4180), one row a bake, the earliest first: decimal points, times on the clock of the place. */
export function writeBakes(all: readonly BakeWritten[]): string {
  const head = [
    ...['bake', 'formula', 'began', 'finished', 'zone', 'steps done', 'weighed g'],
    ...figureNames.map(name => units[name]),
    ...tasteNames.map(name => `${name} 1–5`),
    ...['verdict', 'note'],
  ]
  const rows = all.map(({ bake, record }) => {
    const { id, name, at, finished, zone, tastes, verdict, note } = bake
    return [
      id,
      name,
      when(minutesOf(at), zone),
      finished === undefined ? '' : when(minutesOf(finished), zone),
      zone,
      String(record.steps.filter(step => step.at !== undefined).length),
      number(grams(record), 1),
      ...figureNames.map(figure => number(figureOf(bake, figure))),
      ...tasteNames.map(taste => number(tastes?.[taste])),
      verdict,
      note,
    ]
  })
  return writeTable([head, ...rows])
}

const writtenSays = ({ written }: StepRecord): string =>
  written === undefined
    ? ''
    : written.least === written.most
      ? number(written.usual, 1)
      : `${number(written.least, 1)}–${number(written.most, 1)}`

/** Bakes as CSV, one row a step: when it was to be and was, minutes it took and was written for, what was measured at it. */
export function writeBakedSteps(all: readonly BakeWritten[]): string {
  const head = [
    ...['bake', 'formula', 'stage', 'step', 'kind', 'planned', 'began', 'minutes', 'written minutes'],
    ...figureNames.map(name => units[name]),
  ]
  const rows = all.flatMap(({ bake, record }) =>
    record.steps.map(step => {
      const at = (figure: FigureName) =>
        bake.figures.filter(({ what, moment }) => what === figure && moment.split(' ').includes(step.id))
      return [
        bake.id,
        bake.name,
        step.stage,
        step.name,
        step.kind,
        when(step.planned, bake.zone),
        when(step.at, bake.zone),
        number(step.took, 1),
        writtenSays(step),
        ...figureNames.map(figure => number(at(figure)[0]?.value)),
      ]
    }),
  )
  return writeTable([head, ...rows])
}
