import type { Formula } from '../../dough/document/formula.js'
import type { Worded } from '../../engine/index.js'
import { type DataDiagnostic, dataProblem } from './words.js'

const mostStages = 200
const mostLines = 5000

/** Why a formula is larger than any is kept here; undefined where it is not. */
export function tooLarge({
  name,
  stages,
}: Pick<Formula, 'name' | 'stages'>): Worded<DataDiagnostic> | undefined {
  const lines = stages.reduce((sum, stage) => sum + stage.lines.length, 0)
  const about = (count: number, most: number) => ({ formula: name, count, most })
  if (lines > mostLines) return dataProblem({ code: 'tooManyLines', ...about(lines, mostLines) })
  if (stages.length > mostStages)
    return dataProblem({ code: 'tooManyStages', ...about(stages.length, mostStages) })
  return undefined
}
