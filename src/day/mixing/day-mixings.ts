import type { Day } from '../../dough/document/day.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { sharedKey } from '../course/day-problem.js'
import { type Mixing, mixingOf } from './mixing.js'

/** One mixing of a day: of a bread's stage, or of a stage that several breads share. */
export interface DayMixing {
  readonly bread: string // id; of the first, where it is made for several
  readonly breads: readonly string[]
  readonly stage: string // id
  readonly stageName: string
  readonly isFinal: boolean
  readonly mixing: Mixing
}

/**
 * All mixings of a day whose water is to be brought to a temperature, bread by bread in the order of their stages; a stage
 * that is made together once, with the weights of all. `sheetOf` gives a bread's formula with the day's batch.
 */
export function mixingsOf(day: Day, sheetOf: (bread: string) => FigureSheet | undefined): DayMixing[] {
  const shared = new Map<string, { grams: number; breads: string[] }>()
  const each = day.breads.flatMap(({ id }) => {
    const sheet = sheetOf(id)
    return sheet ? sheet.workedOut.outline.stages.map(plan => ({ id, sheet, plan })) : []
  })
  for (const { id, sheet, plan } of each) {
    const key = sharedKey(plan.stage.name)
    if (plan.isFinal || !day.together.includes(key)) continue
    const made = shared.get(key) ?? { grams: 0, breads: [] }
    made.grams += sheet.stage(plan.stage.id).build ?? Number.NaN
    made.breads.push(id)
    shared.set(key, made)
  }
  return each.flatMap(({ id, sheet, plan }): DayMixing[] => {
    const together = plan.isFinal ? undefined : shared.get(sharedKey(plan.stage.name))
    if (together && together.breads[0] !== id) return []
    const own = sheet.stage(plan.stage.id).build
    const mixing = mixingOf(day, id, plan.stage.id, sheet, together && own ? together.grams / own : 1)
    if (!mixing) return []
    const { id: stage, name: stageName } = plan.stage
    const breads = together?.breads ?? [id]
    return [{ bread: id, breads, stage, stageName, isFinal: plan.isFinal, mixing }]
  })
}
