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
  if (lines > largest.lines) return tooManyLines(name, lines)
  if (stages.length > largest.stages)
    return dataProblem({ code: 'tooManyStages', formula: name, count: stages.length, most: largest.stages })
  return undefined
}

/** That a formula has more lines than are kept of any. */
export const tooManyLines = (formula: string, count: number): Worded<DataDiagnostic> =>
  dataProblem({ code: 'tooManyLines', formula, count, most: largest.lines })
