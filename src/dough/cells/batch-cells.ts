import { type Batch, doughForPieces } from '../document/batch.js'
import { hasBatch } from '../document/formula.js'
import { cellOf } from '../outline/names.js'
import { inOrder, type Outline, type StagePlan } from '../outline/outline.js'
import { type Build, seedLines, timesOf } from './builds.js'
import type { CellWriter } from './cell-writer.js'
import { writeAllOf } from './rare-cells.js'
import { cellProblem } from './words.js'

/** The batch as cells: how many times each stage is made, and what is taken of it. */
export function writeTimes(out: CellWriter, outline: Outline): void {
  const { final, stages } = outline
  if (!hasBatch(outline.formula)) {
    for (const stage of stages) writeFactor(out, cellOf.times(stage), `times ${stage.stage.name}`, 1)
    return
  }
  const builds = inOrder(stages).reverse().map(buildOf) // takers first
  writeTimesOfDough(out, outline, builds)
  for (const build of builds)
    if (build.stage !== final)
      out.belonging({ of: 'stage', id: build.stage.stage.id }, () => writeBuild(out, build))
  for (const stage of stages) {
    if (builds.some(b => b.stage === stage)) continue
    const why = stage.circle ?? cellProblem({ code: 'takesACircle' })
    out.fail(cellOf.times(stage), `times ${stage.stage.name}`, why)
  }
}

/** So many times what is written, or what it is scaled to. */
function writeFactor(out: CellWriter, name: string, words: string, factor: number): void {
  if (!out.cells.has(cellOf.scale)) out.input(name, words, factor)
  else out.compute(name, words, `factor ${factor}`, [cellOf.scale], ([k]) => factor * k!)
}

function buildOf(stage: StagePlan): Build {
  const { keepBack = 0, loss = 0 } = stage.stage
  return { stage, loss, keepBack: keepBack === 'seed' ? 0 : keepBack, isSeedKept: keepBack === 'seed' }
}

function writeBuild(out: CellWriter, { stage, loss, keepBack, isSeedKept }: Build): void {
  const { name } = stage.stage
  out.sum(cellOf.needed(stage), `what the batch takes of ${name}`, stage.takenBy.map(cellOf.batch))
  const seed = isSeedKept ? seedLines(stage).map(cellOf.weight) : []
  const of = [cellOf.needed(stage), cellOf.stageWeight(stage), ...seed]
  out.compute(
    cellOf.times(stage),
    `times ${name}`,
    `build ${loss} ${keepBack}`,
    of,
    ([needed, weight, ...seeds]) => timesOf(needed!, weight!, loss, keepBack, seeds),
  )
}

/** How many times the final dough is made. */
function writeTimesOfDough(out: CellWriter, outline: Outline, builds: readonly Build[]): void {
  const { final, formula } = outline
  const batch: Batch = formula.batch ?? { make: 'as written' }
  const name = cellOf.times(final)
  const words = `times ${final.stage.name}`
  const over = (wanted: number, cell: string) =>
    out.compute(name, words, `makes ${wanted}`, [cell], ([whole]) => wanted / whole!)
  switch (batch.make) {
    case 'as written':
      return writeFactor(out, name, words, 1)
    case 'factor':
      return writeFactor(out, name, words, batch.factor)
    case 'dough':
      return over(batch.grams, cellOf.stageWeight(final))
    case 'flour':
      return over(batch.grams, cellOf.reading('totalFlour'))
    case 'pieces':
    case 'baked pieces':
      return over(doughForPieces(batch), cellOf.stageWeight(final))
    case 'all of':
      return writeAllOf(out, outline, builds, batch)
  }
}
