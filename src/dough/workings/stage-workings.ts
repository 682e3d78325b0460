import type { Batch } from '../document/batch.js'
import { batchWords } from '../document/batch-words.js'
import { grams, per100 } from '../document/words.js'
import { cellOf } from '../outline/names.js'
import type { Count, LinePlan, StagePlan } from '../outline/outline.js'
import { isFilled } from '../remarks/base-units.js'
import type { FigureReader } from './figure-reader.js'
import { capital, workingWords } from './words.js'
import type { Source, Working } from './working.js'

/** The working of what a stage holds of a count. */
export function stageCount(read: FigureReader, stage: StagePlan, count: Count): Working {
  const { name } = stage.stage
  const cell = cellOf.count(stage, count)
  const sources = read.brought(stage, count)
  const sum = `${sources.map(s => s.figure).join(' + ') || grams(0)} = ${read.grams(cell)}`
  const figures = workingWords.ofAll(sum, read.grams(cellOf.stageWeight(stage)))
  return read.done(
    workingWords.countTitle(count, name),
    cell,
    workingWords.broughtByLines(name),
    figures,
    sources,
  )
}

/** The working of what 100 % means in a stage. */
export function stageBase(read: FigureReader, stage: StagePlan): Working {
  const cell = cellOf.base(stage)
  const title = capital(read.baseWords(stage))
  const isFilledByShares = isFilled(read.at, stage)
  const free = read.at.plan.isFree(stage) || (stage.isFinal && isFilledByShares)
  const end = read.grams(cell)
  const isWeight = (line: LinePlan) => read.at.plan.splits.get(line)!.slope === 'none'
  const own = isFilledByShares ? stage.base.filter(isWeight) : stage.base
  if (!free)
    return read.done(
      title,
      cell,
      isFilledByShares ? workingWords.baseOfGrams : workingWords.baseOfItsLines,
      read.sum(own, end),
      own.map(l => read.line(l)),
    )
  if (stage.isFinal) {
    const { doughWeight } = read.at.outline
    const words = doughWeight === undefined ? workingWords.baseAsSet : workingWords.baseAsHeld(doughWeight)
    return read.done(title, cell, words, end, [])
  }
  return read.done(
    title,
    cell,
    workingWords.baseAsTaken(stage.stage.name),
    workingWords.baseWithin(read.grams(cellOf.taken(stage)), end),
    stage.takenBy.map(l => read.line(l)),
  )
}

/** The working of a stage's weight. */
export function stageWeight(read: FigureReader, stage: StagePlan): Working {
  const cell = cellOf.stageWeight(stage)
  return read.done(
    stage.stage.name,
    cell,
    workingWords.allLines,
    read.sum(stage.lines, read.grams(cell)),
    stage.lines.map(l => read.line(l)),
  )
}

/** The working of what later stages take of a stage. */
export function stageTaken(read: FigureReader, stage: StagePlan): Working {
  const cell = cellOf.taken(stage)
  const title = workingWords.takenTitle(stage.stage.name)
  return read.done(
    title,
    cell,
    workingWords.takers,
    read.sum(stage.takenBy, read.grams(cell)),
    stage.takenBy.map(l => read.line(l)),
  )
}

/** What the batch makes of a stage, as a source. */
export const buildSource = (read: FigureReader, stage: StagePlan): Source => ({
  words: workingWords.inBatch(stage.stage.name),
  figure: read.grams(cellOf.build(stage)),
  how: workingWords.weightAsWritten(read.grams(cellOf.stageWeight(stage))),
  value: read.number(cellOf.build(stage)),
  cell: `stage ${stage.stage.id} build`,
})

/** The working of what the batch makes of a stage. */
export function stageBuild(read: FigureReader, stage: StagePlan): Working {
  const cell = cellOf.build(stage)
  const { name } = stage.stage
  const end = read.grams(cell)
  const written = read.stageSource(stage, 'weight')
  if (!stage.isFinal && read.at.plan.cells.has(cellOf.needed(stage))) {
    const { loss = 0, keepBack = 0 } = stage.stage
    const needed = read.grams(cellOf.needed(stage))
    const words = workingWords.takenByBatch(loss > 0, keepBack !== 0)
    const kept = keepBack === 'seed' ? workingWords.asMuchAsSeed : keepBack ? ` + ${grams(keepBack)}` : ''
    const takers = stage.takenBy.map(l => ({
      ...read.line(l),
      figure: read.grams(cellOf.batch(l)),
      value: read.number(cellOf.batch(l)),
      cell: `line ${l.line.id} batch` as const,
    }))
    return read.done(
      workingWords.batchTitle(name),
      cell,
      words,
      `${needed}${loss ? ` ÷ ${per100(1 - loss)}` : ''}${kept} = ${end}`,
      takers,
    )
  }
  const batch: Batch = read.at.outline.formula.batch ?? { make: 'as written' }
  if (batch.make === 'as written' || !stage.isFinal)
    return read.done(workingWords.batchTitle(name), cell, workingWords.asWritten, end, [written])
  const lost =
    'pieces' in batch
      ? `${batch.bakeLoss && batch.make === 'baked pieces' ? ` ÷ ${per100(1 - batch.bakeLoss)}` : ''}${batch.loss ? ` ÷ ${per100(1 - batch.loss)}` : ''}`
      : ''
  return read.done(
    workingWords.batchTitle(name),
    cell,
    workingWords.make(batchWords(batch), lost !== ''),
    `${batchWords(batch)}${lost} = ${end}`,
    [written],
  )
}
