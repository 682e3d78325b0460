import { isSpokenRead, mayBeSaid } from '../../src/dough/amounts/spoken-reader.js'
import type { Formula } from '../../src/dough/document/formula.js'

/**
 * Fetches what reads amounts as they are said, `half a cup`, and the sentences on those that are not understood: most
 * workbooks have neither, and a page begins without them.
 */
export const fetchSpoken = (): Promise<unknown> => import('../../src/dough/amounts/spoken-at-once.js')

/**
 * Fetches it where an amount of the formulas or of their kept states may want it. Where it cannot be fetched, the formulas
 * are to be shown all the same.
 */
export async function fetchSpokenFor(formulas: readonly Formula[]): Promise<void> {
  const isSaid = ({ stages, jottings }: Pick<Formula, 'stages' | 'jottings'>) =>
    stages.some(({ lines }) => lines.some(({ amount }) => mayBeSaid(amount))) ||
    jottings?.some(({ text }) => mayBeSaid(text)) === true
  const isSaidIn = (formula: Formula) =>
    isSaid(formula) || formula.states?.some(state => isSaid(state.formula)) === true
  if (!isSpokenRead() && formulas.some(isSaidIn)) await fetchSpoken().catch(() => {})
}
