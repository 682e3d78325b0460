import type { Step } from '../../src/dough/document/formula.js'
import { listed } from '../../src/engine/index.js'

/** What a formula says besides its lines is called so; shared with the kept states. */
export const settingWords = {
  make: 'how much to make',
  flourWeight: 'what 100 % flour weighs',
  keptBack: (stage: string): string => `what is kept back of ${stage}`,
  lost: (stage: string): string => `what is lost of ${stage}`,
  method: (stage: string): string => `the method of ${stage}`,
  ferments: (stage: string): string => `whether ${stage} ferments`,
  hold: (held: string): string => `the hold of ${held}`,
  jotting: (name: string): string => `the jotting ${name}`,
  countsAs: (ingredient: string): string => `what ${ingredient} counts as`,
  note: 'the note',
  noteOn: (ingredient: string, stage: string): string => `the note on ${ingredient || 'a line'} in ${stage}`,
  another: (what: string, count: number): string => `${what} (${count})`, // the second and later of one name
} as const

/** What is said of it. */
export const saidWords = {
  lost: (part: string): string => `${part} lost`,
  lostInBaking: (part: string): string => `${part} lost in baking`,
  /** `Bulk (wait) 3.5–4.5 h, at 24 °C: grown by half` */
  step: ({ does, kind, text, note }: Step): string =>
    [does, `(${kind})`, `${text}${note && `: ${note}`}`].filter(Boolean).join(' '),
  asItsSeed: 'as much as its seed',
  yes: 'yes',
  no: 'no',
  inProportion: (value: string): string => `${value}, every line in proportion`,
  gives: (value: string, ingredient: string): string => `${value}, ${ingredient || 'a line'} gives`,
  starter: (hydration: string): string => `starter of ${hydration} hydration`,
} as const

/** What stands where a formula does not say it. */
export const unsaidWords = {
  nothing: 'nothing',
  flourWeight: 'what its lines say',
  method: 'none',
  ferments: 'as its lines say',
  hold: 'not held',
  jotting: 'none',
  countsAs: 'what the larder says',
} as const

/** What a hold is of: a share of all flour. */
export const onAllFlour = (ingredient: string): string => `${ingredient || 'a line'} on all flour`

/** `the note, the jotting tin and the hold of salt`; of many the first ones, and how many more. */
export function listedFew(things: readonly string[]): string {
  const most = 4
  const shown = things.length > most + 1 ? [...things.slice(0, most), `${things.length - most} more`] : things
  return listed(shown)
}

/** `changes how much to make, and takes away the jotting tin`; empty where it does neither. */
export const doneWords = (changes: readonly string[], takesAway: readonly string[]): string =>
  [
    ...(changes.length ? [`changes ${listedFew(changes)}`] : []),
    ...(takesAway.length ? [`takes away ${listedFew(takesAway)}`] : []),
  ].join(', and ')
