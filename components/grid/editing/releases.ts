import { type Formula, isInProportion } from '../../../src/dough/document/formula.js'
import { say } from '../../base/events.js'
import type { TableContext } from '../table/table-context.js'
import { releasedWords } from './release-words.js'

/** Says that a line that gave and has now been given an amount gives no more: that is more than was typed. */
export function sayReleases({ grid }: TableContext, before: Formula, typedIn: string): void {
  const { formula } = grid.sheet
  if (before.id !== formula.id || before.holds === formula.holds) return
  const line = formula.stages.flatMap(s => s.lines).find(l => l.id === typedIn)
  const released = before.holds?.filter(
    hold =>
      (hold.line === line?.id || isInProportion(hold)) &&
      !formula.holds?.some(h => h.line === hold.line && h.reading === hold.reading),
  )
  if (!line || !released?.length) return
  const stillGives = formula.holds?.some(h => h.line === line.id) === true
  say(grid, releasedWords(line, released, stillGives))
}
