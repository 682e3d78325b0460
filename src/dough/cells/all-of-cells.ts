import { nameKey } from '../document/formula.js'
import { cellOf } from '../outline/names.js'
import type { LinePlan, Outline } from '../outline/outline.js'
import { type Build, seedLines, timesOf } from './builds.js'
import type { CellWriter } from './cell-writer.js'
import type { AllOf } from './rare-cells.js'
import { rareProblem } from './rare-words.js'

/**
 * All of one ingredient: of a stage, what the final dough takes of it; of anything else, its weight through
 * all builds, keep-back included, which grows in a straight line with the times the dough is made.
 */
export function writeAllOf(
  out: CellWriter,
  outline: Outline,
  builds: readonly Build[],
  { ingredient, grams }: AllOf,
): void {
  const { final } = outline
  const name = cellOf.times(final)
  const words = `times ${final.stage.name}`
  const key = nameKey(ingredient)
  const isIt = (line: LinePlan) => nameKey(line.line.ingredient) === key
  const isStage = outline.stageNamed(ingredient) !== undefined
  const lines = (isStage ? [final] : builds.map(b => b.stage)).flatMap(s => s.lines.filter(isIt))
  if (!lines.length) return out.fail(name, words, rareProblem({ code: 'allOfUnknown', ingredient }))
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
          ? rareProblem({ code: 'keptBackTakesMore', ingredient, weight: grams })
          : rareProblem({ code: 'allOfNotTaken', ingredient })
      return { kind: 'domain', ...why, origin: name }
    },
  )
}
