import { type CellValue, type Graph, written } from '../engine/index.js'
import type { Batch } from './batch.js'
import type { CellPlan } from './cells.js'
import { type ReadingName, readingNames } from './figures.js'
import { nameKey } from './formula.js'
import { makesUpTheRest } from './hold-cells.js'
import { cellOf, meaningOf } from './names.js'
import {
  type Count,
  ingredientKey,
  type LinePlan,
  lineBrings,
  type Outline,
  type StagePlan,
} from './outline.js'
import { isOwn } from './stage-cells.js'
import { batchWords, grams, holdWords, isWeightReading, per100, plainNumber, readingWords } from './words.js'
import type { CellName, Source, Working } from './working.js'

/** What workings are read from. */
export interface WorkedOut {
  readonly outline: Outline
  readonly plan: CellPlan
  readonly graph: Graph
  explain(value: CellValue): string
}

const capital = (words: string) => words[0]!.toUpperCase() + words.slice(1)

const countWords: Readonly<Record<Count, string>> = {
  flour: 'flour',
  water: 'water',
  salt: 'salt',
  prefermented: 'prefermented flour',
  moisture: 'moisture',
  fat: 'fat',
  sugar: 'sugar',
  egg: 'egg',
  milk: 'milk',
}

/** The totals that a reading is made of, as a count over all flour. */
const overFlour: Partial<Record<ReadingName, Count>> = {
  trueHydration: 'water',
  moistureHydration: 'moisture',
  salt: 'salt',
  prefermentedFlour: 'prefermented',
  fat: 'fat',
  sugar: 'sugar',
  egg: 'egg',
  milk: 'milk',
}

/** Makes the workings of one formula. */
export class Workings {
  constructor(private readonly at: WorkedOut) {}

  /** Throws RangeError for a cell that is not in the formula. */
  of(cell: CellName): Working {
    if ((readingNames as readonly string[]).includes(cell)) return this.#reading(cell as ReadingName)
    const [, kind, id, what] = /^(line|stage) (.*) (\w+)$/.exec(cell) ?? []
    const stages = this.at.outline.stages
    const line = kind === 'line' && stages.flatMap(s => s.lines).find(l => l.line.id === id)
    const stage = kind === 'stage' && stages.find(s => s.stage.id === id)
    if (line && what === 'weight') return this.#weight(line)
    if (line && what === 'percent') return this.#percent(line)
    if (line && what === 'wholeDough') return this.#wholeDough(line)
    if (line && what === 'batch') return this.#batch(line)
    if (stage && what === 'base') return this.#base(stage)
    if (stage && what === 'weight') return this.#stageWeight(stage)
    if (stage && what === 'taken') return this.#taken(stage)
    if (stage && what === 'build') return this.#build(stage)
    if (stage && what && Object.hasOwn(countWords, what)) return this.#count(stage, what as Count)
    throw new RangeError(`There is no figure called ${cell} in ${this.at.outline.formula.name}.`)
  }

  #number(cell: string): number | undefined {
    const value = this.at.graph.value(cell)
    return typeof value === 'number' ? value : undefined
  }
  #grams = (cell: string): string => {
    const value = this.#number(cell)
    return value === undefined ? '–' : grams(value)
  }

  #done(title: string, cell: string, words: string, figures: string, sources: readonly Source[]): Working {
    const value = this.at.graph.value(cell)
    if (typeof value === 'number') return { title, words, figures, value, sources }
    return { title, words, figures: '', value: undefined, sources, problem: this.at.explain(value) }
  }

  #reading(name: ReadingName): Working {
    const { final } = this.at.outline
    const title = capital(readingWords[name])
    const cell = cellOf.reading(name)
    const value = this.#number(cell)
    const count = overFlour[name]
    const end = value === undefined ? '' : isWeightReading(name) ? grams(value) : per100(value)
    if (count) {
      const [part, flour] = [
        this.#grams(cellOf.count(final, count)),
        this.#grams(cellOf.count(final, 'flour')),
      ]
      const sources = [...this.#brought(final, count), ...this.#brought(final, 'flour')]
      return this.#done(
        title,
        cell,
        `all ${countWords[count]} ÷ all flour`,
        `${part} ÷ ${flour} = ${end}`,
        sources,
      )
    }
    const lines = (kind: 'flour' | 'water' | 'levain') =>
      final.lines.filter(l => isOwn(l, kind)).map(l => this.#line(l))
    const over = (kind: 'water' | 'levain', words: string) => {
      const [part, flour] = [
        this.#grams(cellOf.lines(final, kind)),
        this.#grams(cellOf.lines(final, 'flour')),
      ]
      return this.#done(title, cell, words, `${part} ÷ ${flour} = ${end}`, [
        ...lines(kind),
        ...lines('flour'),
      ])
    }
    switch (name) {
      case 'listedHydration':
        return over('water', 'water lines ÷ flour lines of the final dough alone')
      case 'levainOnFlour':
        return over('levain', 'levain and starter lines ÷ flour lines of the final dough')
      case 'doughWeight':
        return this.#done(
          title,
          cell,
          'all lines of the final dough together',
          this.#sum(final.lines, end),
          final.lines.map(l => this.#line(l)),
        )
      default: {
        const total = name === 'totalFlour' ? 'flour' : 'water'
        const sources = this.#brought(final, total)
        return this.#done(
          title,
          cell,
          `${total} lines, and ${total} carried`,
          `${sources.map(s => s.figure).join(' + ')} = ${end}`,
          sources,
        )
      }
    }
  }

  #sum = (lines: readonly LinePlan[], end: string): string =>
    `${lines.map(l => this.#grams(cellOf.weight(l))).join(' + ') || grams(0)} = ${end}`

  #line(plan: LinePlan): Source {
    const value = this.#number(cellOf.weight(plan))
    return {
      words: `${plan.line.ingredient || 'a line'} in ${plan.stage.stage.name}`,
      figure: this.#grams(cellOf.weight(plan)),
      how: '',
      value,
      cell: `line ${plan.line.id} weight`,
      line: plan.line.id,
    }
  }

  /** What each line of a stage brings of a count: its own, or carried by a starter or an earlier stage. */
  #brought(stage: StagePlan, count: Count): Source[] {
    return stage.lines.flatMap((plan): Source[] => {
      const weight = this.#number(cellOf.weight(plan))
      const { source } = plan
      if (source) {
        const carried = count === 'prefermented' && source.ferments ? 'flour' : count
        const share = this.#number(cellOf.share(source, carried))
        if (!share || weight === undefined) return []
        const [part, whole] = this.#shareParts(source, carried)
        const value = weight * share
        return [
          {
            words: `${countWords[count]} carried by ${source.stage.name}`,
            figure: grams(value),
            how: `${grams(weight)} × ${part} ÷ ${whole}`,
            value,
            cell: `stage ${source.stage.id} ${carried}`,
            line: plan.line.id,
          },
        ]
      }
      const brings = lineBrings(plan, count)
      if (!brings) return []
      if (brings === 1)
        return [{ ...this.#line(plan), words: `${plan.line.ingredient} in ${stage.stage.name}` }]
      const value = weight === undefined ? undefined : weight * brings
      return [
        {
          words: `${countWords[count]} in ${plan.line.ingredient}`,
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
    const whole = this.#number(cellOf.stageWeight(stage))
    if (whole) return [this.#grams(cellOf.count(stage, count)), grams(whole)]
    return [per100(this.#number(cellOf.share(stage, count)) ?? 0), per100(1)]
  }

  #count(stage: StagePlan, count: Count): Working {
    const { name } = stage.stage
    const cell = cellOf.count(stage, count)
    const sources = this.#brought(stage, count)
    const figures = `${sources.map(s => s.figure).join(' + ') || grams(0)} = ${this.#grams(cell)}, of ${this.#grams(cellOf.stageWeight(stage))} in all`
    return this.#done(
      `${capital(countWords[count])} in ${name}`,
      cell,
      `what each line of ${name} brings`,
      figures,
      sources,
    )
  }

  #weight(plan: LinePlan): Working {
    const { line, stage, amount, gives } = plan
    const title = `${line.ingredient || 'A line'} in ${stage.stage.name}`
    const cell = cellOf.weight(plan)
    if (gives) return this.#solved(plan, title, cell)
    if (!amount) return this.#done(title, cell, 'nothing typed yet', grams(0), [])
    if ('problem' in amount) return this.#done(title, cell, `typed: ${line.amount}`, '', [])
    const { expression } = amount
    if (amount.plain && amount.typedIn === 'weight')
      return this.#done(title, cell, `typed: ${line.amount}`, this.#grams(cell), [])
    const sources: Source[] = []
    const figures: string[] = []
    for (const name of expression.names) {
      const meant = meaningOf(name, plan, this.at.outline)
      if (meant.kind === 'unit' || meant.kind === 'unknown') {
        figures.push(name)
        if (meant.kind === 'unit' && !/^unit:(g|kg|oz|lb)$/.test(name))
          sources.push({
            words: `a ${name.slice(5)} of ${line.ingredient}`,
            figure: grams(meant.grams),
            how: 'from the larder, an estimate',
            value: meant.grams,
          })
        continue
      }
      const found: Source[] =
        meant.kind === 'base'
          ? [this.#baseSource(stage)]
          : meant.kind === 'lines' || meant.kind === 'far lines'
            ? meant.lines.map(l => this.#line(l))
            : meant.kind === 'count'
              ? [this.#stageSource(meant.stage, meant.count)]
              : meant.kind === 'stage base'
                ? [this.#baseSource(meant.stage)]
                : [this.#stageSource(meant.stage, 'weight')]
      sources.push(...found)
      figures.push(found.length === 1 ? found[0]!.figure : `(${found.map(f => f.figure).join(' + ')})`)
    }
    const percentOnly = amount.typedIn === 'percent'
    const said = written(expression.tree, { names: figures, numbers: expression.numbers })
    const base = percentOnly ? ` of ${this.#grams(cellOf.base(stage))}` : ''
    return this.#done(
      title,
      cell,
      `typed: ${line.amount}${percentOnly ? ` of the ${this.#baseWords(stage)}` : ''}`,
      `${said}${base} = ${this.#grams(cell)}`,
      sources,
    )
  }

  #baseWords = (stage: StagePlan): string =>
    stage.baseIsFlour ? `flour of ${stage.stage.name}` : `base of ${stage.stage.name}`

  #baseSource = (stage: StagePlan): Source => ({
    words: this.#baseWords(stage),
    figure: this.#grams(cellOf.base(stage)),
    how: '100 % there',
    value: this.#number(cellOf.base(stage)),
    cell: `stage ${stage.stage.id} base`,
  })

  #stageSource(stage: StagePlan, what: Count | 'weight'): Source {
    const cell = what === 'weight' ? cellOf.stageWeight(stage) : cellOf.count(stage, what)
    const words = what === 'weight' ? stage.stage.name : `${countWords[what]} in ${stage.stage.name}`
    return {
      words,
      figure: this.#grams(cell),
      how: '',
      value: this.#number(cell),
      cell: `stage ${stage.stage.id} ${what}`,
    }
  }

  /** A line that gives: the equation of its hold with its figures, and the other holds solved with it. */
  #solved(plan: LinePlan, title: string, cell: string): Working {
    const { final, formula } = this.at.outline
    const hold = plan.gives!
    const name = plan.line.ingredient
    const others = final.lines
      .filter(l => l.gives && l !== plan)
      .map(l => holdWords(l.gives!, l.line.ingredient))
    const together = others.length ? `, solved together with ${others.join(', ')}` : ''
    const words = `${name} gives, so that ${holdWords(hold, name).replace(' held at ', ' is ')}${together}`
    if (makesUpTheRest(this.at.outline, plan)) {
      const figures = `${this.#brought(final, 'flour')
        .map(s => s.figure)
        .join(' + ')} = ${grams(formula.flourWeight)}`
      return this.#done(
        title,
        cell,
        `${name} makes up the rest of the flour weight${together}`,
        figures,
        this.#brought(final, 'flour'),
      )
    }
    if (hold.reading === 'wholeDough') {
      const sources = this.#through(ingredientKey(plan))
      const all = sources.map(s => s.figure).join(' + ')
      return this.#done(
        title,
        cell,
        words,
        `${all} = ${per100(hold.value)} × ${this.#grams(cellOf.count(final, 'flour'))}`,
        sources,
      )
    }
    const reading = this.#reading(hold.reading)
    const count = overFlour[hold.reading]
    const equation = count
      ? `${this.#brought(final, count)
          .map(s => s.figure)
          .join(' + ')} = ${per100(hold.value)} × ${this.#grams(cellOf.count(final, 'flour'))}`
      : reading.figures
    return this.#done(title, cell, words, equation, reading.sources)
  }

  #percent(plan: LinePlan): Working {
    const { stage, amount, gives } = plan
    const title = `${plan.line.ingredient || 'A line'}, per cent of the ${this.#baseWords(stage)}`
    const typed = !gives && amount && !('problem' in amount) && amount.typedIn === 'percent'
    const cell = cellOf.weight(plan)
    const [weight, base] = [this.#number(cell), this.#number(cellOf.base(stage))]
    const value = weight !== undefined && base ? weight / base : undefined
    const end = value === undefined ? '–' : per100(value)
    const sources = [this.#line(plan), this.#baseSource(stage)]
    if (typed)
      return { title, words: `typed: ${plan.line.amount}`, figures: end, value, sources: sources.slice(1) }
    const problem = weight === undefined ? this.at.explain(this.at.graph.value(cell)) : undefined
    const figures = `${this.#grams(cell)} ÷ ${this.#grams(cellOf.base(stage))} = ${end}`
    return {
      title,
      words: `its weight ÷ the ${this.#baseWords(stage)}`,
      figures,
      value,
      sources,
      ...(problem ? { problem } : {}),
    }
  }

  /** The lines of an ingredient through all stages, with what of each ends in the dough. */
  #through(key: string): Source[] {
    return this.at.outline.stages
      .flatMap(s => s.lines)
      .filter(l => !l.source && l.line.ingredient && ingredientKey(l) === key)
      .map(l => {
        const weight = this.#number(cellOf.weight(l))
        const part = this.#number(cellOf.carried(l.stage))
        const value = weight === undefined || part === undefined ? undefined : weight * part
        const how = l.stage.isFinal
          ? ''
          : `${this.#grams(cellOf.weight(l))} × ${part === undefined ? '–' : per100(part)} of ${l.stage.stage.name}`
        return { ...this.#line(l), figure: value === undefined ? '–' : grams(value), how, value }
      })
  }

  #wholeDough(plan: LinePlan): Working {
    const { final } = this.at.outline
    const cell = cellOf.wholeDough(plan)
    const title = `${plan.line.ingredient} in the whole dough`
    const sources = this.#through(ingredientKey(plan))
    const value = this.#number(cell)
    const figures = `(${sources.map(s => s.figure).join(' + ')}) ÷ ${this.#grams(cellOf.count(final, 'flour'))} = ${value === undefined ? '–' : per100(value)}`
    return this.#done(title, cell, `its weight through all stages ÷ all flour`, figures, [
      ...sources,
      this.#stageSource(final, 'flour'),
    ])
  }

  #base(stage: StagePlan): Working {
    const cell = cellOf.base(stage)
    const title = capital(this.#baseWords(stage))
    const free = this.at.plan.isFree(stage)
    const end = this.#grams(cell)
    if (!free)
      return this.#done(
        title,
        cell,
        'so much that the lines that are 100 % add up to it',
        this.#sum(stage.base, end),
        stage.base.map(l => this.#line(l)),
      )
    if (stage.isFinal) return this.#done(title, cell, 'the flour weight set for this formula', end, [])
    const makes = `so much that ${stage.stage.name} is just what later stages take of it`
    return this.#done(
      title,
      cell,
      makes,
      `${this.#grams(cellOf.taken(stage))} in all, ${end} of it`,
      stage.takenBy.map(l => this.#line(l)),
    )
  }

  #stageWeight(stage: StagePlan): Working {
    const cell = cellOf.stageWeight(stage)
    return this.#done(
      stage.stage.name,
      cell,
      'all of its lines together',
      this.#sum(stage.lines, this.#grams(cell)),
      stage.lines.map(l => this.#line(l)),
    )
  }

  #taken(stage: StagePlan): Working {
    const cell = cellOf.taken(stage)
    const title = `What later stages take of ${stage.stage.name}`
    return this.#done(
      title,
      cell,
      'the lines that take it',
      this.#sum(stage.takenBy, this.#grams(cell)),
      stage.takenBy.map(l => this.#line(l)),
    )
  }

  #batch(plan: LinePlan): Working {
    const cell = cellOf.batch(plan)
    const times = this.#number(cellOf.times(plan.stage))
    const figures = `${this.#grams(cellOf.weight(plan))} × ${times === undefined ? '–' : plainNumber(times)} = ${this.#grams(cell)}`
    const title = `${plan.line.ingredient || 'A line'} in the batch`
    return this.#done(title, cell, `its weight × the times ${plan.stage.stage.name} is made`, figures, [
      this.#line(plan),
      this.#buildSource(plan.stage),
    ])
  }

  #buildSource = (stage: StagePlan): Source => ({
    words: `${stage.stage.name} in the batch`,
    figure: this.#grams(cellOf.build(stage)),
    how: `${this.#grams(cellOf.stageWeight(stage))} as written`,
    value: this.#number(cellOf.build(stage)),
    cell: `stage ${stage.stage.id} build`,
  })

  #build(stage: StagePlan): Working {
    const cell = cellOf.build(stage)
    const { name } = stage.stage
    const end = this.#grams(cell)
    const written = this.#stageSource(stage, 'weight')
    if (!stage.isFinal && this.at.plan.cells.has(cellOf.needed(stage))) {
      const { loss = 0, keepBack = 0 } = stage.stage
      const needed = this.#grams(cellOf.needed(stage))
      const words = `what the batch takes of it${loss ? ', ÷ what is not lost' : ''}${keepBack ? ', and what is kept back' : ''}`
      const kept = keepBack === 'seed' ? ' + as much as the seed' : keepBack ? ` + ${grams(keepBack)}` : ''
      const takers = stage.takenBy.map(l => ({
        ...this.#line(l),
        figure: this.#grams(cellOf.batch(l)),
        value: this.#number(cellOf.batch(l)),
        cell: `line ${l.line.id} batch` as const,
      }))
      return this.#done(
        `${name} in the batch`,
        cell,
        words,
        `${needed}${loss ? ` ÷ ${per100(1 - loss)}` : ''}${kept} = ${end}`,
        takers,
      )
    }
    const batch: Batch = this.at.outline.formula.batch ?? { make: 'as written' }
    if (batch.make === 'as written' || !stage.isFinal)
      return this.#done(`${name} in the batch`, cell, 'as written', end, [written])
    const lost =
      'pieces' in batch
        ? `${batch.bakeLoss && batch.make === 'baked pieces' ? ` ÷ ${per100(1 - batch.bakeLoss)}` : ''}${batch.loss ? ` ÷ ${per100(1 - batch.loss)}` : ''}`
        : ''
    const lossWords = lost ? ', through what is lost' : ''
    return this.#done(
      `${name} in the batch`,
      cell,
      `make ${batchWords(batch)}${lossWords}`,
      `${batchWords(batch)}${lost} = ${end}`,
      [written],
    )
  }
}

/** The working to ask for of an ingredient's figure, by names; undefined when there is no such line. */
export function cellNamed(
  outline: Outline,
  stage: string,
  ingredient: string,
  column: 'weight' | 'percent' | 'wholeDough' | 'batch',
): CellName | undefined {
  const line = outline.stageNamed(stage)?.lines.find(l => nameKey(l.line.ingredient) === nameKey(ingredient))
  return line && `line ${line.line.id} ${column}`
}
