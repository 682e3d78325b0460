import { guessCountsAs } from '../../dough/counts-as-guess.js'
import { type CountsAs, type Line, type Meaning, nameKey, newId, type Stage } from '../../dough/formula.js'
import type { Larder } from '../../dough/larder.js'
import { gramsPerMeasure, type Measure } from '../../dough/measures.js'
import { weightUnits } from '../../dough/units.js'
import { unnamed } from '../columns.js'
import type { StageKind } from './headings.js'
import { stageKinds } from './kitchen-words.js'
import { numberText } from './numbers.js'
import type { Found } from './segment.js'
import { tokensOf } from './tokens.js'

/** A line while the recipe is being read. */
export interface LineDraft {
  readonly id: string
  readonly row: number
  readonly source: string
  ingredient: string
  amount: string
  note: string
  readonly known: boolean
  readonly guesses: string[]
}

/** A stage while the recipe is being read; one without a name is what no heading is over. */
export interface StageDraft {
  name: string
  readonly kind: StageKind | undefined
  readonly lines: LineDraft[]
}

export function draftOf(found: Found, row: number, source: string): LineDraft {
  const { ingredient, amount, note, known, guesses } = found
  return { id: newId(), row, source, ingredient, amount, note, known, guesses: [...guesses] }
}

/** The stages that hold something, the final dough last. */
export function inOrder(stages: readonly StageDraft[]): StageDraft[] {
  const used = stages.filter(stage => stage.lines.length > 0)
  if (used.length === 0) return []
  const doughs = used.filter(stage => stage.kind === 'dough')
  const final =
    doughs.at(-1) ??
    used.find(stage => stage.name === '') ??
    used.findLast(stage => stage.kind === undefined) ??
    used.at(-1)!
  const ordered = [...used.filter(stage => stage !== final), final]
  ordered.forEach((stage, at) => {
    if (stage.name === '') stage.name = stage === final ? unnamed.stage : `Stage ${at + 1}`
  })
  return ordered
}

const only = new Set(
  'all the of your my from above below tout toute le la l du de reste remaining whole entire total'.split(
    ' ',
  ),
)
const kindWordsOf = (name: string): string[] =>
  tokensOf(name)
    .map(t => t.key.replace(/s$/, ''))
    .filter(key => stageKinds.get(key) === 'ferments' || stageKinds.get(key) === 'soaks')

/** The earlier stage that a line speaks of: by its name, or as the only one of its kind. */
function sourceOf(line: LineDraft, earlier: readonly StageDraft[]): StageDraft | undefined {
  const key = nameKey(line.ingredient)
  const named = earlier.find(stage => nameKey(stage.name) === key)
  if (named) return named
  const words = kindWordsOf(line.ingredient)
  const same = earlier.filter(stage => kindWordsOf(stage.name).some(word => words.includes(word)))
  return same.length === 1 ? same[0] : undefined
}

/** What a stage weighs, where all its lines are weights and measures the larder knows. */
function gramsOf(stage: StageDraft, larder: Larder): number | undefined {
  let sum = 0
  for (const { amount, ingredient } of stage.lines) {
    const [, number, unit = ''] = /^([\d.]+) (.+)$/.exec(amount) ?? []
    const known = larder.find(ingredient)
    const one =
      unit in weightUnits
        ? weightUnits[unit as keyof typeof weightUnits]
        : known && gramsPerMeasure(known, unit as Measure)
    if (number === undefined || one === undefined) return undefined
    sum += Number(number) * one
  }
  return sum
}

/** A line that speaks of an earlier stage takes its name; without an amount it takes all of it. */
function refer(line: LineDraft, source: StageDraft, larder: Larder): void {
  const written = line.ingredient
  line.ingredient = source.name
  const besides = tokensOf(written)
    .filter(t => t.kind === 'word' && !only.has(t.key) && !kindWordsOf(source.name).includes(t.key))
    .map(t => t.text)
  if (nameKey(written) !== nameKey(source.name) && besides.length > 0)
    line.note = [besides.join(' '), line.note].filter(Boolean).join(', ')
  if (line.amount !== '') return
  const grams = gramsOf(source, larder)
  if (grams === undefined) return
  line.amount = `${numberText(Number(grams.toFixed(2)))} g`
  line.guesses.push(`All of ${source.name} was taken: its lines add to ${line.amount}.`)
}

/** A stage is not made of itself: what bears its name in it is the starter it is built from. */
function seed(line: LineDraft, stage: StageDraft): void {
  const ofItself = nameKey(line.ingredient) === nameKey(stage.name)
  const levain =
    !line.known && kindWordsOf(line.ingredient).some(word => ['levain', 'leaven', 'chef'].includes(word))
  if (stage.kind !== 'ferments' || !(ofItself || levain)) return
  const starter = nameKey(stage.name) === 'ripe starter' ? 'Sourdough starter' : 'Ripe starter'
  line.guesses.push(`“${line.ingredient}” within ${stage.name} was taken as ${starter}, at 100 %.`)
  line.note = [line.ingredient, line.note].filter(Boolean).join(', ')
  line.ingredient = starter
}

/** Names lines after the stages they take, and asks for amounts that are missing. */
export function settleLines(stages: readonly StageDraft[], larder: Larder): void {
  stages.forEach((stage, at) => {
    const earlier = stages.slice(Math.max(0, at - 40), at)
    for (const line of stage.lines) {
      const source = earlier.length > 0 ? sourceOf(line, earlier) : undefined
      if (source) refer(line, source, larder)
      else seed(line, stage)
      if (line.amount === '' && line.guesses.length === 0)
        line.guesses.push(`No amount is given for ${line.ingredient}: type one.`)
      if (/^(levure|yeast|dry yeast|levure s[eè]che)$/i.test(line.ingredient) && !line.known)
        line.guesses.push('Fresh, active dry and instant yeast differ: say which it is.')
    }
  })
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
    const words = kind === 'starter' ? 'a starter at 100 %' : kind
    line.guesses.push(`${ingredient} is not in the larder: it was taken to count as ${words}.`)
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
