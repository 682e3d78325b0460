import { written } from '../../engine/index.js'
import { makesUpTheRest } from '../cells/hold-cells.js'
import type { ReadingName } from '../document/reading-names.js'
import { grams, holdWords, per100, plainNumber } from '../document/words.js'
import type { Meant } from '../outline/meant.js'
import { cellOf, meaningOf, otherTakers } from '../outline/names.js'
import { ingredientKey, type LinePlan, type StagePlan } from '../outline/outline.js'
import { type FigureReader, overFlour } from './figure-reader.js'
import { readingWorking } from './reading-workings.js'
import { buildSource } from './stage-workings.js'
import { workingWords } from './words.js'
import type { Source, Working } from './working.js'

/** The working of a line's weight. */
export function lineWeight(read: FigureReader, plan: LinePlan): Working {
  const { line, stage, amount, gives } = plan
  const title = workingWords.lineTitle(line.ingredient, stage.stage.name)
  const cell = cellOf.weight(plan)
  if (gives) return solved(read, plan, title, cell)
  if (!amount) return read.done(title, cell, workingWords.nothingTyped, grams(0), [])
  if ('problem' in amount) return read.done(title, cell, workingWords.typed(line.amount), '', [])
  const { expression } = amount
  const { doughWeight } = read.at.outline
  const isScaled = doughWeight !== undefined && expression.names.some(name => name.startsWith('unit:'))
  const times = isScaled ? read.number(cellOf.scale) : undefined
  const scaled = times === undefined ? '' : ` × ${plainNumber(times)}`
  if (amount.plain && amount.typedIn === 'weight') {
    const figures = scaled ? `${line.amount}${scaled} = ${read.grams(cell)}` : read.grams(cell)
    return read.done(
      title,
      cell,
      workingWords.typedAndScaled(line.amount, isScaled, doughWeight),
      figures,
      [],
    )
  }
  const sources: Source[] = []
  const figures: string[] = []
  for (const name of expression.names) {
    const meant = meaningOf(name, plan, read.at.outline)
    if (meant.kind === 'unit' || meant.kind === 'unknown') {
      figures.push(name)
      if (meant.kind === 'unit' && !/^unit:(g|kg|oz|lb)$/.test(name))
        sources.push({
          words: workingWords.unit(name.slice(5), line.ingredient),
          figure: grams(meant.grams),
          how: workingWords.fromLarder,
          value: meant.grams,
        })
      continue
    }
    if (meant.kind === 'all') {
      const others = otherTakers(plan).map(l => read.line(l))
      const made = read.stageSource(meant.stage, 'weight')
      const { loss } = meant.stage.stage
      const kept = loss ? `${made.figure} × ${per100(1 - loss)}` : made.figure
      sources.push(made, ...others)
      const all = [kept, ...others.map(o => o.figure)].join(' − ')
      figures.push(all === kept && expression.names.length === 1 ? all : `(${all})`)
      continue
    }
    const found = sourcesOf(read, meant, stage)
    sources.push(...found)
    figures.push(found.length === 1 ? found[0]!.figure : `(${found.map(f => f.figure).join(' + ')})`)
  }
  const percentOnly = amount.typedIn === 'percent'
  const said = written(expression.tree, { names: figures, numbers: expression.numbers })
  const base = percentOnly ? ` of ${read.grams(cellOf.base(stage))}` : ''
  return read.done(
    title,
    cell,
    percentOnly
      ? workingWords.typed(line.amount, read.baseWords(stage))
      : workingWords.typedAndScaled(line.amount, isScaled, doughWeight),
    `${scaled ? `(${said})${scaled}` : `${said}${base}`} = ${read.grams(cell)}`,
    sources,
  )
}

/** What a name in an amount or a jotting was taken from. `stage` is where `base` is read. */
export function sourcesOf(read: FigureReader, meant: Meant, stage: StagePlan): Source[] {
  switch (meant.kind) {
    case 'base':
      return [read.baseSource(stage)]
    case 'lines':
    case 'far lines':
      return meant.lines.map(l => read.line(l))
    case 'count':
      return [read.stageSource(meant.stage, meant.count)]
    case 'stage weight':
      return [read.stageSource(meant.stage, 'weight')]
    case 'stage base':
      return [read.baseSource(meant.stage)]
    case 'jotting':
      return [read.jottingSource(meant.name)]
    case 'reading':
      return [read.readingSource(meant.name as ReadingName)]
    default:
      return []
  }
}

/** A line that gives: the equation of its hold with its figures, and the other holds solved with it. */
function solved(read: FigureReader, plan: LinePlan, title: string, cell: string): Working {
  const { final, formula } = read.at.outline
  const hold = plan.gives!
  const name = plan.line.ingredient
  const others = final.lines
    .filter(l => l.gives && l !== plan)
    .map(l => holdWords(l.gives!, l.line.ingredient))
  const words = workingWords.gives(name, holdWords(hold, name, 'is'), others)
  if (makesUpTheRest(read.at.outline, plan)) {
    const figures = `${read
      .brought(final, 'flour')
      .map(s => s.figure)
      .join(' + ')} = ${grams(formula.flourWeight)}`
    return read.done(
      title,
      cell,
      workingWords.restOfFlour(name, others),
      figures,
      read.brought(final, 'flour'),
    )
  }
  if (hold.reading === 'wholeDough') {
    const sources = read.through(ingredientKey(plan))
    const all = sources.map(s => s.figure).join(' + ')
    return read.done(
      title,
      cell,
      words,
      `${all} = ${per100(hold.value)} × ${read.grams(cellOf.count(final, 'flour'))}`,
      sources,
    )
  }
  const reading = readingWorking(read, hold.reading)
  const count = overFlour[hold.reading]
  const equation = count
    ? `${read
        .brought(final, count)
        .map(s => s.figure)
        .join(' + ')} = ${per100(hold.value)} × ${read.grams(cellOf.count(final, 'flour'))}`
    : reading.figures
  return read.done(title, cell, words, equation, reading.sources)
}

/** The working of a line's listed percentage. */
export function linePercent(read: FigureReader, plan: LinePlan): Working {
  const { stage, amount, gives } = plan
  const title = workingWords.percentTitle(plan.line.ingredient, read.baseWords(stage))
  const typed = !gives && amount && !('problem' in amount) && amount.typedIn === 'percent'
  const cell = cellOf.weight(plan)
  const [weight, base] = [read.number(cell), read.number(cellOf.base(stage))]
  const value = weight !== undefined && base ? weight / base : undefined
  const end = value === undefined ? '–' : per100(value)
  const sources = [read.line(plan), read.baseSource(stage)]
  if (typed)
    return {
      title,
      words: workingWords.typed(plan.line.amount),
      figures: end,
      value,
      sources: sources.slice(1),
    }
  const problem = weight === undefined ? read.at.explain(read.at.graph.value(cell)) : undefined
  const figures = `${read.grams(cell)} ÷ ${read.grams(cellOf.base(stage))} = ${end}`
  return {
    title,
    words: workingWords.weightOverBase(read.baseWords(stage)),
    figures,
    value,
    sources,
    ...(problem ? { problem } : {}),
  }
}

/** The working of an ingredient's share of the whole dough. */
export function lineWholeDough(read: FigureReader, plan: LinePlan): Working {
  const { final } = read.at.outline
  const cell = cellOf.wholeDough(plan)
  const title = workingWords.wholeDoughTitle(plan.line.ingredient)
  const sources = read.through(ingredientKey(plan))
  const value = read.number(cell)
  const figures = `(${sources.map(s => s.figure).join(' + ')}) ÷ ${read.grams(cellOf.count(final, 'flour'))} = ${value === undefined ? '–' : per100(value)}`
  return read.done(title, cell, workingWords.weightOverFlour, figures, [
    ...sources,
    read.stageSource(final, 'flour'),
  ])
}

/** What is weighed of it, where that is another number. */
function onTheScale(read: FigureReader, plan: LinePlan): string {
  const weighed = read.at.weighed(plan.line.id)
  if (!weighed || grams(weighed.grams) === read.grams(cellOf.batch(plan))) return ''
  return workingWords.inSteps(grams(weighed.step), grams(weighed.grams))
}

/** The working of a line's weight in the batch. */
export function lineBatch(read: FigureReader, plan: LinePlan): Working {
  const cell = cellOf.batch(plan)
  const times = read.number(cellOf.times(plan.stage))
  const figures = `${read.grams(cellOf.weight(plan))} × ${times === undefined ? '–' : plainNumber(times)} = ${read.grams(cell)}${onTheScale(read, plan)}`
  const title = workingWords.batchTitle(plan.line.ingredient)
  return read.done(title, cell, workingWords.weightTimes(plan.stage.stage.name), figures, [
    read.line(plan),
    buildSource(read, plan.stage),
  ])
}
