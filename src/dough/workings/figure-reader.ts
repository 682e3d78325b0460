import type { ReadingName } from '../document/reading-names.js'
import { grams, isWeightReading, measured, per100, plainNumber, readingWords } from '../document/words.js'
import { cellOf } from '../outline/names.js'
import {
  type Count,
  carriedAs,
  ingredientKey,
  type LinePlan,
  lineBrings,
  type StagePlan,
} from '../outline/outline.js'
import { numberIn, valueIn, type WorkedOut } from '../sheet/worked-out.js'
import { workingWords } from './words.js'
import type { Source, Working } from './working.js'

/** The totals that a reading is made of, as a count over all flour. */
export const overFlour: Partial<Record<ReadingName, Count>> = {
  trueHydration: 'water',
  moistureHydration: 'moisture',
  salt: 'salt',
  prefermentedFlour: 'prefermented',
  fat: 'fat',
  sugar: 'sugar',
  egg: 'egg',
  milk: 'milk',
}

/** Reads figures and what they came from out of a formula that is worked out. */
export class FigureReader {
  constructor(readonly at: WorkedOut) {}

  number(cell: string): number | undefined {
    return numberIn(this.at, cell)
  }
  grams = (cell: string): string => {
    const value = this.number(cell)
    return value === undefined ? '–' : grams(value)
  }

  done(title: string, cell: string, words: string, figures: string, sources: readonly Source[]): Working {
    const value = valueIn(this.at, cell)
    if (typeof value === 'number') return { title, words, figures, value, sources }
    const problem = this.at.explain(value)
    return { title, words, figures: '', value: undefined, sources, ...(problem && { problem }) }
  }

  sum = (lines: readonly LinePlan[], end: string): string =>
    `${lines.map(l => this.grams(cellOf.weight(l))).join(' + ') || grams(0)} = ${end}`

  line(plan: LinePlan): Source {
    const value = this.number(cellOf.weight(plan))
    return {
      words: workingWords.line(plan.line.ingredient, plan.stage.stage.name),
      figure: this.grams(cellOf.weight(plan)),
      how: '',
      value,
      cell: `line ${plan.line.id} weight`,
      line: plan.line.id,
    }
  }

  /** What each line of a stage brings of a count: its own, or carried by a starter or an earlier stage. */
  brought(stage: StagePlan, count: Count): Source[] {
    return stage.lines.flatMap((plan): Source[] => {
      const weight = this.number(cellOf.weight(plan))
      const { source } = plan
      if (source) {
        const carried = carriedAs(source, count)
        const share = this.number(cellOf.share(source, carried))
        if (!share || weight === undefined) return []
        const [part, whole] = this.#shareParts(source, carried)
        const value = weight * share
        return [
          {
            words: workingWords.carried(count, source.stage.name),
            figure: grams(value),
            how:
              grams(weight) === whole ? workingWords.allOfIts(part) : `${grams(weight)} × ${part} ÷ ${whole}`,
            value,
            cell: `stage ${source.stage.id} ${carried}`,
            line: plan.line.id,
          },
        ]
      }
      const brings = lineBrings(plan, count)
      if (!brings) return []
      if (brings === 1) return [this.line(plan)]
      const value = weight === undefined ? undefined : weight * brings
      return [
        {
          words: workingWords.count(count, plan.line.ingredient),
          figure: value === undefined ? '–' : grams(value),
          how: weight === undefined ? '' : `${grams(weight)} × ${this.#bringsWords(plan, count, brings)}`,
          value,
          cell: `line ${plan.line.id} weight`,
          line: plan.line.id,
        },
      ]
    })
  }

  #bringsWords(plan: LinePlan, count: Count, brings: number): string {
    if (plan.countsAs?.kind !== 'starter') return per100(brings)
    const percent = plainNumber(plan.countsAs.hydration * 100)
    const part = count === 'water' || count === 'moisture' ? percent : '100'
    return `${part} ÷ ${plainNumber(100 + plan.countsAs.hydration * 100)}`
  }

  /** The share of a count in a stage, in grams as written where anything is made of it. */
  #shareParts(stage: StagePlan, count: Count): readonly [string, string] {
    const whole = this.number(cellOf.stageWeight(stage))
    if (whole) return [this.grams(cellOf.count(stage, count)), grams(whole)]
    return [per100(this.number(cellOf.share(stage, count)) ?? 0), per100(1)]
  }

  baseWords = (stage: StagePlan): string => workingWords.base(stage.stage.name, stage.baseIsFlour)

  baseSource = (stage: StagePlan): Source => ({
    words: this.baseWords(stage),
    figure: this.grams(cellOf.base(stage)),
    how: workingWords.wholeBase,
    value: this.number(cellOf.base(stage)),
    cell: `stage ${stage.stage.id} base`,
  })

  stageSource(stage: StagePlan, what: Count | 'weight'): Source {
    const cell = what === 'weight' ? cellOf.stageWeight(stage) : cellOf.count(stage, what)
    const words = what === 'weight' ? stage.stage.name : workingWords.count(what, stage.stage.name)
    return {
      words,
      figure: this.grams(cell),
      how: '',
      value: this.number(cell),
      cell: `stage ${stage.stage.id} ${what}`,
    }
  }

  /** The lines of an ingredient through all stages, with what of each ends in the dough. */
  through(key: string): Source[] {
    return this.at.outline.stages
      .flatMap(s => s.lines)
      .filter(l => !l.source && l.line.ingredient && ingredientKey(l) === key)
      .map(l => {
        const weight = this.number(cellOf.weight(l))
        const part = this.number(cellOf.carried(l.stage))
        const value = weight === undefined || part === undefined ? undefined : weight * part
        const how = l.stage.isFinal
          ? ''
          : workingWords.part(
              this.grams(cellOf.weight(l)),
              part === undefined ? '–' : per100(part),
              l.stage.stage.name,
            )
        return { ...this.line(l), figure: value === undefined ? '–' : grams(value), how, value }
      })
  }

  jottingSource(name: string): Source {
    const value = this.number(cellOf.jotting(name))
    const { jotting, dimension } = this.at.outline.jottings.get(name)!
    return {
      words: jotting.name,
      figure: measured(value, dimension),
      how: jotting.text,
      value,
      cell: `jotting ${jotting.id}`,
    }
  }

  readingSource(name: ReadingName): Source {
    const value = this.number(cellOf.reading(name))
    const figure = value === undefined ? '–' : isWeightReading(name) ? grams(value) : per100(value)
    return { words: readingWords[name], figure, how: '', value, cell: name }
  }
}
