import { nameFor, parse } from '../../engine/index.js'
import type { Jotting } from '../document/formula.js'
import { unitWords } from '../lexicon/unit-words.js'

/** What becomes of a name that stands in an amount or a jotting. */
export type Renamed = (name: string) => string

/** `salt` → `sea_salt`, and no other name. */
export const wholeName = (from: string, to: string): Renamed => {
  const [old, now] = [nameFor(from), nameFor(to)]
  return name => (name === old ? now : name)
}

/** A stage's: `levain` → `rye_levain`, `levain.water` → `rye_levain.water`. */
export const stageName = (from: string, to: string): Renamed => {
  const [old, now] = [nameFor(from), nameFor(to)]
  return name => {
    const [head, ...rest] = name.split('.')
    return head === old ? [now, ...rest].join('.') : name
  }
}

/** A line's as it is called from elsewhere: `levain.salt` → `levain.sea_salt`. */
export const nameInStage = (stage: string, from: string, to: string): Renamed => {
  const [old, now] = [from, to].map(name => `${nameFor(stage)}.${nameFor(name)}`)
  return name => (name === old ? now! : name)
}

/** An amount or a jotting with other names in it. A text that is not understood, or names none of them, stays as it is. */
export function withNames(text: string, renamed: Renamed): string {
  if (!text) return text
  try {
    const { text: canonical, names, spans } = parse(text, { units: unitWords })
    let now = canonical
    for (const { slot, at, length } of [...spans].sort((a, b) => b.at - a.at)) {
      const name = renamed(names[slot]!)
      if (name !== names[slot]) now = now.slice(0, at) + name + now.slice(at + length)
    }
    return now === canonical ? text : now
  } catch {
    return text
  }
}

/** Jottings with other names in their texts; undefined when nothing changes. */
export function jottingsWithNames(
  jottings: readonly Jotting[] = [],
  renamed: Renamed,
): readonly Jotting[] | undefined {
  const now = jottings.map(j => {
    const text = withNames(j.text, renamed)
    return text === j.text ? j : { ...j, text }
  })
  return now.some((j, i) => j !== jottings[i]) ? now : undefined
}
