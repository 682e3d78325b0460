import type { Formula } from '../../dough/document/formula.js'

const mostStages = 200
const mostLines = 5000

const inWords = (count: number): string => count.toLocaleString('en-GB')

/** Why a formula is larger than any is kept here, in words that follow its name; undefined where it is not. */
export function tooLarge({ stages }: Pick<Formula, 'stages'>): string | undefined {
  const lines = stages.reduce((sum, stage) => sum + stage.lines.length, 0)
  if (lines > mostLines)
    return `has ${inWords(lines)} lines; a formula holds at most ${inWords(mostLines)}. Bring it in in parts.`
  if (stages.length > mostStages)
    return `has ${inWords(stages.length)} stages; a formula holds at most ${mostStages}. Bring it in in parts.`
  return undefined
}
