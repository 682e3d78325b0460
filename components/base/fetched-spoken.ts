import { isSpokenRead, mayBeSaid } from '../../src/dough/amounts/spoken-reader.js'
import { type Formula, isInProportion } from '../../src/dough/document/formula.js'

/**
 * Fetches what reads amounts as they are said, `half a cup`, `all of it`, the sentences on those that are not understood,
 * what scales a dough, and batches of all of an ingredient: most workbooks have none of it, and a page begins without.
 */
export const fetchSpoken = (): Promise<unknown> => import('../../src/dough/cells/rare-at-once.js')

/**
 * Fetches it where an amount of the formulas or of their kept states may want it. Where it cannot be fetched, the formulas
 * are to be shown all the same.
 */
export async function fetchSpokenFor(formulas: readonly Formula[]): Promise<void> {
  const isSaid = ({ stages, jottings }: Pick<Formula, 'stages' | 'jottings'>) =>
    stages.some(({ lines }) => lines.some(({ amount }) => mayBeSaid(amount))) ||
    jottings?.some(({ text }) => mayBeSaid(text)) === true
  const isSaidIn = (formula: Formula) =>
    isSaid(formula) ||
    formula.batch?.make === 'all of' ||
    formula.holds?.some(isInProportion) ||
    formula.states?.some(state => isSaid(state.formula)) === true
  if (!isSpokenRead() && formulas.some(isSaidIn)) await fetchSpoken().catch(() => {})
}
