import type { Formula } from '../../dough/document/formula.js'
import { largest } from '../../dough/document/largest.js'
import type { Worded } from '../../engine/index.js'
import { type DataDiagnostic, dataProblem } from './words.js'

/** Why a formula is larger than any is kept here; undefined where it is not. */
export function tooLarge({
  name,
  stages,
}: Pick<Formula, 'name' | 'stages'>): Worded<DataDiagnostic> | undefined {
  const lines = stages.reduce((sum, stage) => sum + stage.lines.length, 0)
  const about = (count: number, most: number) => ({ formula: name, count, most })
  if (lines > largest.lines) return dataProblem({ code: 'tooManyLines', ...about(lines, largest.lines) })
  if (stages.length > largest.stages)
    return dataProblem({ code: 'tooManyStages', ...about(stages.length, largest.stages) })
  return undefined
}
