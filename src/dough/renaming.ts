import { nameFor, parse } from '../engine/index.js'
import { unitWords } from './units.js'

/**
 * An amount in which the name of an ingredient or stage has become another: `2*salt` → `2*sea_salt`,
 * `levain.water` → `rye_levain.water`. A text that is not understood, or does not speak of it, is returned as it is.
 */
export function renameInAmounts(amount: string, from: string, to: string): string {
  const [old, now] = [nameFor(from), nameFor(to)]
  if (!amount || old === now) return amount
  try {
    const { text, names, spans } = parse(amount, { units: unitWords })
    let renamed = text
    for (const { slot, at, length } of [...spans].sort((a, b) => b.at - a.at)) {
      const [head, ...rest] = names[slot]!.split('.')
      if (head === old) renamed = renamed.slice(0, at) + [now, ...rest].join('.') + renamed.slice(at + length)
    }
    return renamed === text ? amount : renamed
  } catch {
    return amount
  }
}
