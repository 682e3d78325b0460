import { readFormulaData } from '../../dough/data/formula-data.js'
import type { LeftOut } from '../../dough/data/left-out.js'
import type { Formula } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import type { Worded } from '../../engine/index.js'
import { withOwnMeanings } from '../values/counts-as.js'
import { whyHostile } from './hostile.js'
import { withIds, withoutIds } from './new-ids.js'
import { fromBase64Url, type NotPacked, notPacked, pack, toBase64Url, unpack } from './packed.js'
import { tooLarge } from './too-long.js'
import { type DataDiagnostic, dataProblem } from './words.js'

const version = 1
/** What every browser and most messages let through (RFC 9110, section 4.1, asks for 8,000 octets at least). */
const mostCharacters = 8000
/** Bytes of the formula itself: a link of 8,000 characters comes to a small part of this. */
const mostUnpacked = 500_000
const key = 'formula='

/**
 * A link to `base` that carries the whole formula in its fragment, which no browser sends to a server. Kept states and its
 * group stay behind; what ingredients count as in `larder`, unlike in the usual one, goes along.
 */
export async function linkOf(formula: Formula, base: string, larder?: Larder): Promise<string | NotPacked> {
  const { states: _states, group: _group, ...sent } = withoutIds(withOwnMeanings(formula, larder))
  const packed = await pack(JSON.stringify(sent))
  if (!packed) return notPacked({ code: 'browserWithoutStreams' })
  const bytes = new Uint8Array(packed.length + 1)
  bytes[0] = version
  bytes.set(packed, 1)
  const link = `${base.replace(/#.*$/s, '')}#${key}${toBase64Url(bytes)}`
  if (link.length <= mostCharacters) return link
  return notPacked({
    code: 'linkTooLong',
    formula: formula.name,
    characters: link.length,
    most: mostCharacters,
  })
}

/** Whether the fragment of an address holds a formula, readable or not. */
export const isFormulaLink = (fragment: string): boolean => fragment.replace(/^#/, '').startsWith(key)

/**
 * The formula in the fragment of a link, with ids of its own; what of it could not be read is told beside it. The text may be
 * anything: it comes from outside.
 */
export async function formulaFromLink(
  fragment: string,
): Promise<{ readonly formula: Formula; readonly remarks: readonly Worded<DataDiagnostic>[] } | NotPacked> {
  const damaged = notPacked({ code: 'linkDamaged' })
  if (fragment.length > mostCharacters) return notPacked({ code: 'linkOverlong' })
  if (!isFormulaLink(fragment)) return notPacked({ code: 'linkWithoutFormula' })
  const bytes = fromBase64Url(fragment.replace(/^#/, '').slice(key.length))
  if (!bytes || bytes.length < 2) return damaged
  if (bytes[0]! > version) return notPacked({ code: 'linkOfNewerVersion' })
  if (bytes[0] !== version) return damaged
  const unpacked = await unpack(bytes.subarray(1), mostUnpacked)
  if ('problem' in unpacked) return unpacked
  let value: unknown
  try {
    value = JSON.parse(unpacked.text)
  } catch {
    return damaged
  }
  const remarks: LeftOut[] = []
  const formula = whyHostile(value)
    ? undefined
    : readFormulaData(value, told => remarks.push(told), 'a state')
  if (!formula || tooLarge(formula)) return damaged
  return {
    formula: withIds(formula),
    remarks: remarks.map(told => dataProblem({ ...told, item: 'formula' })),
  }
}
