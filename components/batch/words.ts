import { html, nothing, type TemplateResult } from 'lit'

/** `a, b and c`, with other signs where they are given. */
const list = (parts: readonly unknown[], joint: string, last = joint) =>
  parts.map((part, at) => [at === 0 ? nothing : at === parts.length - 1 ? last : joint, part])

/** Pieces of one weight. */
export interface ShapeSaid {
  readonly count: string
  readonly isOne: boolean
  readonly weight: string
  readonly name: string // '' where it has none
  readonly baked: string // what it weighs after it is baked; '' where that is not said
}

/** `6 pieces of 900 g and 12 of 80 g` */
const shapesWords = (shapes: readonly ShapeSaid[]) =>
  list(
    shapes.map(({ count, isOne, weight, name, baked }, at) => {
      const noun = at > 0 ? '' : isOne ? 'piece ' : 'pieces '
      return html`<b>${count}</b> ${noun}of <b>${weight}</b>${baked ? ` (${baked} baked)` : ''}${name ? `, ${name}` : ''}`
    }),
    shapes.some(({ name }) => name) ? '; ' : ', ',
    shapes.some(({ name }) => name) ? '; ' : ' and ',
  )

/** How much to make. Weights come with their unit. */
export const makeWords = {
  asWritten: (dough: string | undefined): TemplateResult =>
    html`As written${dough === undefined ? nothing : html`: ${dough} of dough`}`,
  pieces: (shapes: readonly ShapeSaid[]): TemplateResult => html`Make ${shapesWords(shapes)}`,
  bakedPieces: (shapes: readonly ShapeSaid[]): TemplateResult => html`Make ${shapesWords(shapes)} when baked`,
  dough: (weight: string): TemplateResult => html`Make <b>${weight}</b> of dough`,
  flour: (weight: string): TemplateResult => html`Make the dough of <b>${weight}</b> of flour`,
  allOf: (weight: string, ingredient: string): TemplateResult =>
    html`Use all of <b>${weight}</b> of ${ingredient}`,
  factor: (times: string): TemplateResult => html`Make <b>${times}</b> times what is written`,
} as const

/** What is lost: a percentage with its sign. */
export const lossWords = {
  inBaking: (part: string): string => `${part} lost in baking`,
  inMixing: (part: string): string => `${part} lost in mixing`,
  lost: (part: string): string => `${part} lost`,
} as const

export const keepWords = {
  asItsSeed: (stage: string): TemplateResult => html`keep back as much ${stage} as its seed`,
  grams: (weight: string, stage: string): TemplateResult => html`keep back <b>${weight}</b> of ${stage}`,
  lost: (part: string, stage: string): TemplateResult => html`${part} of ${stage} lost`,
} as const

/** What is to be made, lost and kept back, as one sentence. */
export const batchSentence = (parts: readonly unknown[]): TemplateResult => html`${list(parts, '; ')}.`

/** Where an earlier stage goes; each is one of a list. */
export const leftWords = {
  made: (weight: string): string => `${weight} made`,
  taken: (weight: string): string => `${weight} taken`,
  goesInto: (weight: string, stages: readonly string[]): string =>
    `${weight} goes into ${stages.join(' and ')}`,
  left: (weight: string): string => `${weight} left`,
  short: (weight: string): string => `${weight} short`,
  lost: (weight: string): string => `${weight} lost`,
  keptBack: (weight: string): string => `${weight} kept back`,
} as const

/** What a weight would be on a scale without steps. */
export const exactWords = (weight: string): string => `${weight} before it is rounded to the scale’s steps`

/** Of the button that opens and closes the fields. */
export const batchWords = {
  howMuch: 'How much to make',
  change: 'Change',
  changeThis: 'Change how much to make',
  done: 'Done',
  doneWithThis: 'Done: how much to make',
} as const
