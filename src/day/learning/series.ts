import type { Larder } from '../../dough/document/larder.js'
import type { Workbook } from '../../dough/document/workbook.js'
import { openSheet } from '../../dough/sheet/sheet.js'
import { type Bake, type FigureName, figureNames, type TasteName, tasteNames } from '../bench/bake.js'
import { bakesIn } from '../bench/bake-data.js'
import { bakedWith, bakeRecord } from '../bench/bake-record.js'
import type { Learning } from './learning.js'
import { figureOf, lessonOf, speedLesson } from './lessons.js'

/** Something measured at several bakes. */
export type Measure =
  | { readonly of: 'figure'; readonly figure: FigureName }
  | { readonly of: 'taste'; readonly taste: TasteName }
  | { readonly of: 'rise' | 'speed'; readonly stage: string } // °C that mixing made; f of the levain
  | { readonly of: 'bakeLoss' | 'loss' } // fractions of 1
  | { readonly of: 'took'; readonly stage: string; readonly step: string } // minutes

/** A measurement over the bakes of a formula, the earliest first. */
export interface Series {
  readonly key: string
  readonly measure: Measure
  readonly points: readonly { readonly bake: Bake; readonly value: number }[]
}

/** The bakes of a formula, the earliest first. */
export const bakesOfFormula = (workbook: Pick<Workbook, 'bakes'>, formula: string): Bake[] =>
  bakesIn(workbook).filter(bake => bake.formula.id === formula)

/** All that was measured at any bake of a formula. */
export function seriesOf(workbook: Workbook, formula: string, larder: Larder, learning: Learning): Series[] {
  const bakes = bakesOfFormula(workbook, formula)
  const all = new Map<string, { measure: Measure; points: Series['points'][number][] }>()
  const add = (bake: Bake, key: string, measure: Measure, value: number | undefined) => {
    if (value === undefined) return
    const series = all.get(key) ?? { measure, points: [] }
    series.points.push({ bake, value })
    all.set(key, series)
  }
  const everyBake = bakesIn(workbook)
  for (const bake of bakes) {
    for (const figure of figureNames) add(bake, figure, { of: 'figure', figure }, figureOf(bake, figure))
    const lessons = learning.lessons(bake)
    for (const { id, name: stage } of bake.formula.stages) {
      add(bake, `rise ${stage}`, { of: 'rise', stage }, lessons.get(lessonOf.rise(formula, { name: stage })))
      const speed = speedLesson(openSheet(bake.formula, larder), id)
      if (speed) add(bake, `speed ${stage}`, { of: 'speed', stage }, lessons.get(speed))
    }
    add(bake, 'bakeLoss', { of: 'bakeLoss' }, lessons.get(lessonOf.bakeLoss(formula)))
    add(bake, 'loss', { of: 'loss' }, lessons.get(lessonOf.loss(formula)))
    const { steps } = bakeRecord(bake, larder, workbook.scale, bakedWith(bake, everyBake))
    for (const { key, stage, name, took } of steps)
      add(bake, `took ${key}`, { of: 'took', stage, step: name }, took)
    for (const taste of tasteNames) add(bake, `taste ${taste}`, { of: 'taste', taste }, bake.tastes?.[taste])
  }
  return [...all].map(([key, { measure, points }]) => ({ key, measure, points }))
}
