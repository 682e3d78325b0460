import type { Formula, Problem } from '../../dough/document/formula.js'
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

/** What was read without the formulas that are larger than any is kept, each of which is told. */
export function withoutTooLarge<
  Read extends { readonly formulas: readonly Formula[]; readonly problems: readonly Problem[] },
>(read: Read): Read {
  const problems = read.formulas.flatMap((formula): Problem[] => {
    const why = tooLarge(formula)
    return why ? [{ ...why, where: {}, severity: 'error' }] : []
  })
  if (problems.length === 0) return read
  const formulas = read.formulas.filter(formula => !tooLarge(formula))
  return { ...read, formulas, problems: [...problems, ...read.problems] }
}

/** That a formula has more lines than are kept of any. */
export const tooManyLines = (formula: string, count: number): Worded<DataDiagnostic> =>
  dataProblem({ code: 'tooManyLines', formula, count, most: largest.lines })
