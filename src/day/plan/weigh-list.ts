import '../../dough/cells/rare-cells-at-once.js'
import '../../dough/weighed/weighed-batch.js'
import type { Scale } from '../../dough/document/batch.js'
import type { Day } from '../../dough/document/day.js'
import { type Formula, type Line, type Stage, sameName } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { openSheet } from '../../dough/sheet/sheet.js'
import { rounded } from '../../dough/weighed/weighing.js'
import type { DayEvent } from '../course/day-network.js'
import { stepsOf } from '../method/stage-steps.js'

/** Something to be weighed at a step. */
export interface ToWeigh {
  readonly ingredient: string
  readonly grams: number | undefined // of the batch, unrounded; undefined: not known
  readonly weighed: number | undefined // the same in steps of the scale
  readonly note: string
  readonly lines: readonly string[] // ids; several where a stage is made for several breads
}

/** The weights of a day's formulas, each with how much of it is made. */
export class Weights {
  readonly #formulas: ReadonlyMap<string, Formula>
  readonly #larder: Larder | undefined
  readonly #scale: Scale | undefined
  readonly #sheets = new Map<string, { readonly formula: Formula; readonly sheet: FigureSheet }>()

  constructor(formulas: readonly Formula[], larder: Larder | undefined, scale?: Scale) {
    this.#formulas = new Map(formulas.map(f => [f.id, f]))
    this.#larder = larder
    this.#scale = scale
  }

  /** The sheet of one bread of the day: its formula with the day's batch. */
  sheet(day: Day, bread: string): FigureSheet | undefined {
    const formula = this.#formula(day, bread)
    const { batch } = day.breads.find(b => b.id === bread) ?? {}
    if (!formula || !batch) return undefined
    const known = this.#sheets.get(bread)
    if (known && known.formula.batch === batch && known.sheet.larder === (this.#larder ?? known.sheet.larder))
      return known.sheet
    const made = { ...formula, batch }
    const sheet = openSheet(made, this.#larder, this.#scale)
    this.#sheets.set(bread, { formula: made, sheet })
    return sheet
  }

  /** What goes in at a step; where the stage is made for several breads, the weights added line by line. */
  of(day: Day, event: DayEvent): readonly ToWeigh[] {
    const breads = event.breads.filter(id => this.#formula(day, id)) // one may be gone since it was planned
    const stage = breads.length ? this.#stage(day, breads[0]!, event.stage) : undefined
    const step = stage && stepsOf(stage, 0).find(s => s.step.id === event.step.id)
    if (!step || event.time !== undefined || (event.load && event.load.number > 1)) return []
    return this.#lines(day, stage, breads, step.lines)
  }

  #formula(day: Day, bread: string): Formula | undefined {
    const { formula } = day.breads.find(b => b.id === bread) ?? {}
    return formula === undefined ? undefined : this.#formulas.get(formula)
  }

  #stage(day: Day, bread: string, id: string): Stage | undefined {
    return this.#formula(day, bread)?.stages.find(s => s.id === id)
  }

  /** Grams that a scale weighs of each line of a stage, by its id in the first of the breads it is made for; lines of which nothing is known are left out. */
  lines(day: Day, stage: string, breads: readonly string[]): ReadonlyMap<string, number> {
    const of = this.#stage(day, breads[0]!, stage)
    const weighed = of ? this.build(day, of, breads) : []
    return new Map(
      weighed.flatMap(({ weighed: grams }, i) => (grams === undefined ? [] : [[of!.lines[i]!.id, grams]])),
    )
  }

  /** All that goes into a stage, whether or not a step of it says so; `breads`: ids of those that it is made for. */
  build(day: Day, stage: Stage, breads: readonly string[]): readonly ToWeigh[] {
    return this.#lines(day, stage, breads, stage.lines)
  }

  /** How much of a stage is made for each bread, grams as they add up in the build; undefined: not known. */
  shares(day: Day, stage: Stage, breads: readonly string[]): readonly (number | undefined)[] {
    return this.#builds(day, stage, breads).map(({ grams }) =>
      grams === undefined || Number.isNaN(grams) ? undefined : grams,
    )
  }

  #builds(day: Day, stage: Stage, breads: readonly string[]) {
    return breads.map(bread => {
      const sheet = this.sheet(day, bread)
      const own = sheet?.formula.stages.find(s => sameName(s.name, stage.name))
      const grams = own?.lines.reduce((sum, { id }) => sum + (sheet?.line(id).batch ?? Number.NaN), 0)
      return { own, grams }
    })
  }

  #lines(day: Day, stage: Stage, breads: readonly string[], lines: readonly Line[]): readonly ToWeigh[] {
    const builds = this.#builds(day, stage, breads)
    const [{ grams: build }] = builds as [(typeof builds)[0]]
    const all = builds.reduce((sum, { grams = Number.NaN }) => sum + grams, 0)
    const sheet = this.sheet(day, breads[0]!)
    return lines.map(line => {
      const own = sheet?.line(line.id).batch
      // Of one make-up: each line of the whole is as much more as the whole is.
      const grams = builds.length === 1 || own === undefined ? own : (own * all) / build!
      const others = builds.flatMap(({ own }) =>
        own ? own.lines.filter(({ ingredient }) => sameName(ingredient, line.ingredient)) : [],
      )
      const known = grams === undefined || Number.isNaN(grams) ? undefined : grams
      const alone = builds.length === 1 ? sheet?.weighed(line.id) : undefined
      return {
        ingredient: line.ingredient,
        grams: known,
        weighed: known === undefined || !sheet ? undefined : (alone ?? rounded(known, sheet.scale)).grams,
        note: line.note,
        lines: builds.length === 1 ? [line.id] : others.map(({ id }) => id),
      }
    })
  }
}
