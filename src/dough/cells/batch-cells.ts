import { type Batch, doughForPieces } from '../document/batch.js'
import { hasBatch, nameKey } from '../document/formula.js'
import { cellOf } from '../outline/names.js'
import { inOrder, type LinePlan, type Outline, type StagePlan } from '../outline/outline.js'
import type { CellWriter } from './cell-writer.js'
import { cellProblem } from './words.js'

/** A stage as the batch makes it: takers come before what they take. */
interface Build {
  readonly stage: StagePlan
  readonly loss: number
  readonly keepBack: number // grams
  readonly isSeedKept: boolean
}

/** The lines that seed a stage: its starters. */
export const seedLines = (stage: StagePlan): LinePlan[] =>
  stage.lines.filter(l => l.countsAs?.kind === 'starter')

/** The batch as cells: how many times each stage is made, and what is taken of it. */
export function writeTimes(out: CellWriter, outline: Outline): void {
  const { final, stages, doughWeight } = outline
  if (!hasBatch(outline.formula)) {
    for (const stage of stages)
      writeFactor(out, cellOf.times(stage), `times ${stage.stage.name}`, 1, doughWeight)
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
function writeFactor(
  out: CellWriter,
  name: string,
  words: string,
  factor: number,
  doughWeight?: number,
): void {
  if (doughWeight === undefined) out.input(name, words, factor)
  else out.compute(name, words, `factor ${factor}`, [cellOf.scale], ([k]) => factor * k!)
}

function buildOf(stage: StagePlan): Build {
  const { keepBack = 0, loss = 0 } = stage.stage
  return { stage, loss, keepBack: keepBack === 'seed' ? 0 : keepBack, isSeedKept: keepBack === 'seed' }
}

/** build = needed ÷ (1 − loss) + keep-back; kept as much as the seed, the seed's own part of it is what grows. */
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

function timesOf(
  needed: number,
  weight: number,
  loss: number,
  keepBack: number,
  seeds: readonly number[],
): number {
  const made = weight - seeds.reduce((sum, w) => sum + w, 0)
  return made <= 0 ? 0 : (needed / (1 - loss) + keepBack) / made
}

/** How many times the final dough is made. */
function writeTimesOfDough(out: CellWriter, outline: Outline, builds: readonly Build[]): void {
  const { final, formula, doughWeight } = outline
  const batch: Batch = formula.batch ?? { make: 'as written' }
  const name = cellOf.times(final)
  const words = `times ${final.stage.name}`
  const over = (wanted: number, cell: string) =>
    out.compute(name, words, `makes ${wanted}`, [cell], ([whole]) => wanted / whole!)
  switch (batch.make) {
    case 'as written':
      return writeFactor(out, name, words, 1, doughWeight)
    case 'factor':
      return writeFactor(out, name, words, batch.factor, doughWeight)
    case 'dough':
      return over(batch.grams, cellOf.stageWeight(final))
    case 'flour':
      return over(batch.grams, cellOf.reading('totalFlour'))
    case 'pieces':
    case 'baked pieces':
      return over(doughForPieces(batch), cellOf.stageWeight(final))
    case 'all of':
      return allOf(out, outline, builds, batch.ingredient, batch.grams)
  }
}

/**
 * All of one ingredient: of a stage, what the final dough takes of it; of anything else, its weight through
 * all builds, keep-back included, which grows in a straight line with the times the dough is made.
 */
function allOf(
  out: CellWriter,
  outline: Outline,
  builds: readonly Build[],
  ingredient: string,
  grams: number,
): void {
  const { final } = outline
  const name = cellOf.times(final)
  const words = `times ${final.stage.name}`
  const key = nameKey(ingredient)
  const isIt = (line: LinePlan) => nameKey(line.line.ingredient) === key
  const isStage = outline.stageNamed(ingredient) !== undefined
  const lines = (isStage ? [final] : builds.map(b => b.stage)).flatMap(s => s.lines.filter(isIt))
  if (!lines.length) return out.fail(name, words, cellProblem({ code: 'allOfUnknown', ingredient }))
  const inputs: string[] = []
  const at = (cell: string) => (inputs.includes(cell) ? inputs.indexOf(cell) : inputs.push(cell) - 1)
  const plan = builds.map(build => ({
    ...build,
    weight: at(cellOf.stageWeight(build.stage)),
    taken: build.stage.takenBy.map(l => ({
      weight: at(cellOf.weight(l)),
      by: builds.findIndex(b => b.stage === l.stage),
    })),
    seeds: build.isSeedKept ? seedLines(build.stage).map(l => at(cellOf.weight(l))) : [],
    own: lines.filter(l => l.stage === build.stage).map(l => at(cellOf.weight(l))),
  }))
  out.compute(
    name,
    words,
    `all of ${ingredient} ${grams} ${JSON.stringify(plan, (k, v) => (k === 'stage' ? undefined : v))}`,
    inputs,
    values => {
      /** Grams of the ingredient when the final dough is made `k` times. */
      const total = (k: number): number => {
        const times: number[] = []
        let sum = 0
        for (const [i, build] of plan.entries()) {
          const needed = build.taken.reduce((n, t) => n + values[t.weight]! * (times[t.by] ?? 0), 0)
          const seeds = build.seeds.map(s => values[s]!)
          times[i] =
            build.stage === final
              ? k
              : timesOf(needed, values[build.weight]!, build.loss, build.keepBack, seeds)
          sum += build.own.reduce((n, w) => n + values[w]! * times[i]!, 0)
        }
        return sum
      }
      const kept = total(0)
      const each = total(1) - kept
      if (each > 0 && grams > kept) return (grams - kept) / each
      const why =
        each > 0
          ? cellProblem({ code: 'keptBackTakesMore', ingredient, weight: grams })
          : cellProblem({ code: 'allOfNotTaken', ingredient })
      return { kind: 'domain', ...why, origin: name }
    },
  )
}
