import { isOnlyUnit } from '../../../src/dough/lexicon/unit-words.js'
import type { FigureSheet } from '../../../src/dough/sheet/figures.js'
import { nameFor } from '../../../src/engine/index.js'
import type { Row } from '../table/table.js'
import { stageOf } from '../table/table.js'
import type { Choice } from './choices.js'
import { choiceMarks } from './words.js'

/** The name being typed where the caret stands in an amount. */
export interface NameTyped {
  readonly from: number // of its first letter, in the text
  readonly text: string
}

/** Letters after a number are a unit (`2 tsp`), and so are these wherever they stand; anything else may be a name. */
const unfinished = /(?:^|[^\p{L}\p{M}\p{N}_.%)\s])\s*([\p{L}_][\p{L}\p{M}\p{N}_.]*)$/u

export function nameAt(text: string, caret: number): NameTyped | undefined {
  const word = unfinished.exec(text.slice(0, caret))?.[1]
  if (!word || isOnlyUnit(word)) return undefined
  if (/^[\p{L}\p{M}\p{N}_]/u.test(text.slice(caret))) return undefined // in the middle of a word
  return { from: caret - word.length, text: word }
}

/**
 * The names that go on from what is typed, at most eight: those of the line's own stage first. Not the line's
 * own name, since an amount cannot be made of itself.
 */
export function namesFor(typed: string, sheet: FigureSheet, row: Row): Choice[] {
  const { stages, jottings } = sheet.formula
  const at = stages.findIndex(s => s.id === stageOf(row))
  const names = (index: number) => stages[index]?.lines.map(l => nameFor(l.ingredient)) ?? []
  const here = names(at)
  const last = stages.length - 1
  const own = row.kind === 'line' ? nameFor(row.line.ingredient) : ''
  const isAlone = here.filter(name => name === own).length === 1
  const jotted = new Set(jottings?.map(j => nameFor(j.name)))
  // A line of the final dough is called by its name alone in its own stage only.
  const far = new Set(
    at === last ? [] : names(last).filter(name => !here.includes(name) && !jotted.has(name)),
  )
  const offered = [...here, 'base', ...sheet.usableNames].filter(
    name => name.length > 1 && !far.has(name) && !(name === own && isAlone),
  )
  const wanted = typed.toLowerCase()
  // `starter` meets ripe_starter, `ripe` meets levain.ripe_starter.
  const meets = (name: string) =>
    name.startsWith(wanted) || name.includes(`.${wanted}`) || name.includes(`_${wanted}`)
  const begins = (name: string) => (name.startsWith(wanted) ? 0 : 1)
  const met = [...new Set(offered)].filter(meets).sort((a, b) => begins(a) - begins(b))
  const isWhole = met.length === 1 && met[0] === wanted
  return isWhole ? [] : met.slice(0, 8).map(name => ({ name, says: saysOf(name) }))

  function saysOf(name: string): string {
    if (here.includes(name)) return ''
    if (jotted.has(name)) return choiceMarks.jotting
    return name.includes('.') ? '' : choiceMarks.dough
  }
}
