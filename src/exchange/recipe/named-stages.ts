import type { Larder } from '../../dough/document/larder.js'
import { kitchen } from '../values/kitchen-words.js'
import { isOrder } from './clues.js'
import { headingOf } from './headings.js'
import { foundIn } from './pieces.js'
import { type Row, rowOf, textOf } from './recipe-row.js'
import type { Found, Part } from './segment.js'

/** `Topping: sesame seeds, coarse salt`: what goes on a bread, without amounts. */
export function ofFinish(row: Row, colon: number, larder: Larder): Part | undefined {
  const stage = headingOf(rowOf(row.text.slice(0, row.tokens[colon]!.end)))?.stage
  if (stage?.kind !== 'other' || colon === row.tokens.length - 1 || isOrder(row, colon)) return undefined
  const found = foundIn(row, larder, colon + 1)
  return found.length > 0 && found.every(f => f.known)
    ? { found, stage: { ...stage, remark: '' } }
    : undefined
}

/** `All of stage 1`, `all of stage 3 minus 10 g`: a stage above that has a number in its name. */
export function ofWhole(row: Row, isStage: (name: string) => boolean): Found | undefined {
  const { tokens, starting } = row
  // `la totalité du 1er impasto`
  const all = kitchen.definite.has(tokens[0]!.key)
    ? tokens.findIndex((t, i) => i > 0 && t.kind === 'word')
    : 0
  if (!kitchen.all.has(tokens[all]?.key ?? '')) return undefined
  const start = tokens.findIndex((t, i) => i > all && !kitchen.beforeNames.has(t.key))
  const but = tokens.findIndex(t => kitchen.but.has(t.key))
  const name = start < 0 ? '' : textOf(row, start, but < 0 ? tokens.length : but)
  // `all of freshening`
  const isNamed = /\d/.test(name) || tokens[all + 1]?.key === 'of'
  if (!isNamed || !isStage(name)) return undefined
  const kept = but < 0 ? undefined : starting.get(but + 1)
  const less = kept ? { less: textOf(row, kept.from, kept.to) } : {}
  const note = but < 0 ? '' : textOf(row, but, tokens.length)
  const said = { known: false, amount: '', share: 1, guesses: [], said: [], source: row.text.trim() }
  return { ...said, ...less, ingredient: name, note }
}
