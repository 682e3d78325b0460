import { takesAll } from '../amounts/all-of-it.js'
import { allTakenProblem } from './all-taken-words.js'
import { cellOf, otherTakers } from './names.js'
import { useTakingAll } from './taking-all.js'

useTakingAll({
  meant: line => {
    const { source } = line
    if (!source)
      return {
        kind: 'unknown',
        problem: allTakenProblem({ code: 'allOfNoStage', ingredient: line.line.ingredient }),
      }
    const other = otherTakers(line).find(({ amount, gives }) => takesAll(amount) && !gives)
    if (!other) return { kind: 'all', stage: source }
    const names = { taken: source.stage.name, stage: other.stage.stage.name }
    return { kind: 'unknown', problem: allTakenProblem({ code: 'allTakenTwice', ...names }) }
  },

  isOfAnySize: (stage, splits) =>
    stage.base.every(line => splits.get(line)!.fixed === 'none' && splits.get(line)!.by.size === 0) &&
    stage.lines.some(line => splits.get(line)!.slope !== 'none')
      ? allTakenProblem({ code: 'allOfAnySize', stage: stage.stage.name })
      : undefined,

  write: (out, line) => {
    const { stage } = line.source!
    const { loss = 0 } = stage
    const name = `${line.line.id}.all of it`
    const of = [cellOf.stageWeight(line.source!), ...otherTakers(line).map(cellOf.weight)]
    out.compute(name, `all of ${stage.name}`, `all but ${loss}`, of, ([made, ...taken]) =>
      Math.max(
        0,
        taken.reduce((rest, weight) => rest - weight, made! * (1 - loss)),
      ),
    )
    return name
  },

  hanging: ({ stages }, { amounts, stages: other, losses }) =>
    stages.flatMap(({ lines }) =>
      lines.filter(
        ({ source, amount }) =>
          source &&
          takesAll(amount) &&
          (losses || other.includes(source) || source.takenBy.some(line => amounts.includes(line))),
      ),
    ),
})
