import { type Line, type Meaning, nameKey, newId, type Stage } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { guessCountsAs } from '../../dough/larder/counts-as-guess.js'
import { unnamed } from '../csv/columns.js'
import type { StageKind } from './kitchen-words.js'
import type { Found } from './segment.js'
import type { LineReason } from './words.js'

/** A line while the recipe is being read. */
export interface LineDraft extends Found {
  readonly id: string
  readonly row: number // 1-based
  ingredient: string
  amount: string
  note: string
  readonly guesses: LineReason[]
}

/** A stage while the recipe is being read; one without a name is what no heading is over. */
export interface StageDraft {
  name: string
  readonly kind: StageKind | undefined
  readonly heading: { readonly row: number; readonly source: string } | undefined // where it is opened
  readonly lines: LineDraft[]
}

export const draftOf = (found: Found, row: number, source: string): LineDraft => ({
  ...found,
  id: newId(),
  row,
  source,
  guesses: [...found.guesses],
})

/** The stages that hold something, the final dough last. */
export function inOrder(stages: readonly StageDraft[]): StageDraft[] {
  const used = stages.filter(stage => stage.lines.length > 0)
  const final =
    used.findLast(stage => stage.kind === 'dough') ??
    used.find(stage => stage.name === '') ??
    used.findLast(stage => stage.kind === undefined) ??
    used.at(-1)
  if (!final) return []
  const ordered = [...used.filter(stage => stage !== final), final]
  ordered.forEach((stage, at) => {
    if (stage.name === '') stage.name = stage === final ? unnamed.stage : `Stage ${at + 1}`
  })
  return ordered
}

const anyYeast = /^(levure|yeast|dry yeast|levure s[eè]che)$/i
const mixture = /(?<!\p{L})(?:and|et|or|ou|almond|amandes?|hazelnut|noisettes?|coconut|coco|nut)(?!\p{L})/iu

/** Asks for what is missing in lines, and gives what those unknown to the larder count as, by their names. */
export function asked(stages: readonly StageDraft[], larder: Larder): Meaning[] {
  const meanings = new Map<string, Meaning>()
  const names = new Set(stages.map(stage => nameKey(stage.name)))
  for (const { ingredient, amount, known, guesses } of stages.flatMap(stage => stage.lines)) {
    if (amount === '' && guesses.length === 0) guesses.push({ code: 'noAmount', ingredient })
    if (anyYeast.test(ingredient) && !known) guesses.push({ code: 'whichYeast' })
    const key = nameKey(ingredient)
    const isKnown = names.has(key) || larder.find(ingredient) !== undefined || mixture.test(ingredient)
    const kind = isKnown ? undefined : guessCountsAs(ingredient)
    if (!kind || kind === 'other') continue
    guesses.push({ code: 'countsAs', ingredient, kind })
    const countsAs = kind === 'starter' ? { kind, hydration: 1 } : { kind }
    if (!meanings.has(key)) meanings.set(key, { ingredient, countsAs })
  }
  return [...meanings.values()]
}

/** A draft as the formula's stage. */
export const stageOf = ({ name, kind, lines }: StageDraft, isFinal: boolean): Stage => ({
  id: newId(),
  name,
  ...(kind === 'ferments' && !isFinal ? { ferments: true } : {}),
  lines: lines.map(({ id, ingredient, amount, note }): Line => ({ id, ingredient, amount, note })),
})
