import type { Worded } from '../../engine/index.js'
import type { Formula } from '../document/formula.js'
import { largest } from '../document/largest.js'
import { type Countable, type OutlineDiagnostic, outlineProblem } from './words.js'

/** Why so many of something are not worked out in one formula; undefined where they are. */
export const above = (what: Countable, count: number): Worded<OutlineDiagnostic> | undefined =>
  count > largest[what] ? outlineProblem({ code: 'tooMuch', what, count, most: largest[what] }) : undefined

/** Why a formula is too large to be worked out, whatever is written in it. */
export const tooLarge = ({ stages, jottings, holds }: Formula): Worded<OutlineDiagnostic> | undefined =>
  above(
    'lines',
    stages.reduce((sum, { lines }) => sum + lines.length, 0),
  ) ??
  above('stages', stages.length) ??
  above('jottings', jottings?.length ?? 0) ??
  above('holds', holds?.length ?? 0)
