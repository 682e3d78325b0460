import { isSpokenRead, mayBeSaid } from '../../src/dough/amounts/spoken-reader.js'
import { areRareCellsThere, wantsRareCells } from '../../src/dough/cells/rare-cells.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { areBuildsFollowed, hasBuilds } from '../../src/dough/edits/following-builds.js'

/**
 * Fetches what reads amounts as they are said, `half a cup`, `all of it`, and the sentences on those that are not
 * understood: most workbooks have neither, and a page begins without them.
 */
export const fetchSpoken = (): Promise<unknown> =>
  Promise.all([import('../../src/dough/amounts/spoken-at-once.js'), fetchRareCells()])

/** Likewise what works out holds, amounts that are all of a stage, and a batch that uses all of something. */
export const fetchRareCells = (): Promise<unknown> => import('../../src/dough/cells/rare-cells-at-once.js')

/**
 * Fetches what formulas or their kept states may want of it. Where it cannot be fetched, the formulas are to be shown all
 * the same.
 */
export async function fetchFor(formulas: readonly Formula[]): Promise<void> {
  const all = formulas.flatMap(formula => [formula, ...(formula.states ?? []).map(state => state.formula)])
  const isSaid = ({ stages, jottings }: Pick<Formula, 'stages' | 'jottings'>) =>
    stages.some(({ lines }) => lines.some(({ amount }) => mayBeSaid(amount))) ||
    jottings?.some(({ text }) => mayBeSaid(text)) === true
  await Promise.all([
    !isSpokenRead() && all.some(isSaid) && fetchSpoken(),
    !areBuildsFollowed() &&
      formulas.some(hasBuilds) &&
      import('../../src/dough/edits/builds/follow-builds.js'),
    !areRareCellsThere() && all.some(wantsRareCells) && fetchRareCells(),
  ]).catch(() => {})
}
