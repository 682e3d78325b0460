import type { Worded } from '../../engine/index.js'
import { namesElsewhere, namesIn } from './names.js'
import type { Outline, StagePlan } from './outline.js'
import { outlineProblem } from './words.js'

/** A name without what is easily written otherwise: spaces, underscores, hyphens, accents, capitals. */
const bare = (name: string): string =>
  name
    .normalize('NFD')
    .replace(/[\p{M}\s_-]/gu, '')
    .toLowerCase()

type Bare = ReadonlyMap<string, string>

const known = new WeakMap<StagePlan | Outline, Bare>() // of a stage, and of all stages an outline has

function bareNames(of: StagePlan | Outline, names: () => string[]): Bare {
  const bared = known.get(of) ?? new Map(names().map(name => [bare(name), name]))
  known.set(of, bared)
  return bared
}

/**
 * Asks for the name that an amount in a stage, or a jotting, means by words that are none, `total flour` or
 * `total-flour`; undefined where there is no such name.
 */
export function nearName(text: string, outline: Outline, stage = outline.final): Worded | undefined {
  const elsewhere = bareNames(outline, () => namesElsewhere(outline))
  const here = bareNames(stage, () => namesIn(stage, outline))
  const words = [...text.slice(0, 512).matchAll(/[\p{L}\p{M}\p{N}_.]+/gu)] // no expression is longer
  for (const [i, { index }] of words.entries())
    for (const last of words.slice(i, i + 6).reverse()) {
      const written = text.slice(index, last.index + last[0].length)
      const name = elsewhere.get(bare(written)) ?? here.get(bare(written))
      if (name && name !== written.toLowerCase()) return outlineProblem({ code: 'nearName', written, name })
    }
  return undefined
}
