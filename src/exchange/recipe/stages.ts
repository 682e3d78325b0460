import {
  type CountsAs,
  type Line,
  type Meaning,
  nameKey,
  newId,
  type Stage,
} from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { guessCountsAs } from '../../dough/larder/counts-as-guess.js'
import { unnamed } from '../csv/columns.js'
import type { StageKind } from './kitchen-words.js'
import type { LineReason } from './reasons.js'
import type { Found } from './segment.js'
import { takeStages } from './takings.js'

/** A line while the recipe is being read. */
export interface LineDraft {
  readonly id: string
  readonly row: number
  readonly source: string
  ingredient: string
  amount: string
  readonly share: number | 'rest' | undefined // of an earlier stage
  note: string
  readonly known: boolean
  readonly guesses: LineReason[]
  readonly said: Found['said']
}

/** A stage while the recipe is being read; one without a name is what no heading is over. */
export interface StageDraft {
  name: string
  readonly kind: StageKind | undefined
  readonly heading: { readonly row: number; readonly source: string } | undefined // where it is opened
  readonly lines: LineDraft[]
}

export function draftOf(found: Found, row: number, source: string): LineDraft {
  const { ingredient, amount, share, note, known, guesses, said } = found
  return { id: newId(), row, source, ingredient, amount, share, note, known, guesses: [...guesses], said }
}

/** The stages that hold something, the final dough last. */
export function inOrder(stages: readonly StageDraft[]): StageDraft[] {
  const used = stages.filter(stage => stage.lines.length > 0)
  if (used.length === 0) return []
  const final =
    used.findLast(stage => stage.kind === 'dough') ??
    used.find(stage => stage.name === '') ??
    used.findLast(stage => stage.kind === undefined) ??
    used.at(-1)!
  const ordered = [...used.filter(stage => stage !== final), final]
  ordered.forEach((stage, at) => {
    if (stage.name === '') stage.name = stage === final ? unnamed.stage : `Stage ${at + 1}`
  })
  return ordered
}

/** Names lines after the stages they take, and asks for what is missing. */
export function settleLines(stages: readonly StageDraft[], larder: Larder): void {
  takeStages(stages, larder)
  for (const line of stages.flatMap(stage => stage.lines)) {
    const { ingredient, amount, known, guesses } = line
    if (amount === '' && guesses.length === 0) guesses.push({ code: 'noAmount', ingredient })
    if (/^(levure|yeast|dry yeast|levure s[eè]che)$/i.test(ingredient) && !known)
      guesses.push({ code: 'whichYeast' })
  }
}

const mixture = /(?<!\p{L})(?:and|et|or|ou|almond|amandes?|hazelnut|noisettes?|coconut|coco|nut)(?!\p{L})/iu

/** What ingredients unknown to the larder count as, by their names; each a guess to be confirmed. */
export function meaningsOf(stages: readonly StageDraft[], larder: Larder): Meaning[] {
  const meanings = new Map<string, Meaning>()
  const names = new Set(stages.map(stage => nameKey(stage.name)))
  for (const line of stages.flatMap(stage => stage.lines)) {
    const { ingredient } = line
    const key = nameKey(ingredient)
    if (names.has(key) || larder.find(ingredient) || mixture.test(ingredient)) continue
    const kind = guessCountsAs(ingredient)
    if (!kind || kind === 'other') continue
    const countsAs: CountsAs = kind === 'starter' ? { kind, hydration: 1 } : { kind }
    line.guesses.push({ code: 'countsAs', ingredient, kind })
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
