import { type CountsAs, nameKey } from '../../dough/document/formula.js'

/** `flour`, `water`, `salt`, `other`, or `starter 125%` with its hydration to 12 digits. */
export const countsAsText = (countsAs: CountsAs): string =>
  countsAs.kind === 'starter'
    ? `starter ${Number((countsAs.hydration * 100).toPrecision(12))}%`
    : countsAs.kind

/** The same back, in any case and with a decimal point; undefined for anything else. */
export function readCountsAs(text: string): CountsAs | undefined {
  const key = nameKey(text)
  if (key === 'flour' || key === 'water' || key === 'salt' || key === 'other') return { kind: key }
  const percent = /^starter (?:at )?(\d+(?:\.\d+)?) ?%$/.exec(key)?.[1]
  return percent === undefined ? undefined : { kind: 'starter', hydration: Number(`${percent}e-2`) }
}

export const sameCountsAs = (a: CountsAs | undefined, b: CountsAs | undefined): boolean =>
  a !== undefined && b !== undefined && countsAsText(a) === countsAsText(b)
