import type { Hold } from '../document/formula.js'
import { heldValue } from '../document/words.js'
import type { Likeness } from '../larder/known-within.js'

/** What is offered to be done at once. */
export const offerWords = {
  takeAs: (amount: string): string =>
    `Take it as ${amount.replace(/\s*%$/, '\u00a0%').replace(' g', '\u00a0g')}`,
  right: 'The line is right',
  means: (name: string): string => `It is ${name}`,
  countAs: ({ like, countsAs }: Likeness): string =>
    `Count it as ${like ? like.name.charAt(0).toLowerCase() + like.name.slice(1) : countsAs.kind}`,
  likeNote: (name: string): string => `Counted like ${name}`,
  takeAll: (stage: string): string => `Take all of ${stage}`,
  /** `stage` is '' for the whole dough. */
  takeBuild: (stage: string, formula: string): string =>
    stage ? `Take ${stage} as ${formula} makes it` : `Take the dough of ${formula}`,
  all: 'all of it',
  holdAt: (hold: Hold): string => `Hold it at ${heldValue(hold)}`,
  release: 'Release it',
} as const
