import { gramsPerMeasure } from '../../dough/amounts/measures.js'
import type { Measure } from '../../dough/amounts/units.js'
import { weightUnits } from '../../dough/amounts/units.js'
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
import { kindOf, type StageKind } from './headings.js'
import { namesEarlierStage } from './kitchen-words.js'
import { numberAt, numberText } from './numbers.js'
import type { Found } from './segment.js'
import { tokensOf } from './tokens.js'

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
  readonly guesses: string[]
  readonly said: readonly string[]
}

/** A stage while the recipe is being read; one without a name is what no heading is over. */
export interface StageDraft {
  name: string
  readonly kind: StageKind | undefined
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
  'all the of your my from above below tout toute le la l du de reste remaining whole entire total quantite quantity'.split(
    ' ',
  ),
)
const kindWordsOf = (name: string): string[] =>
  tokensOf(name)
    .map(t => t.key.replace(/s$/, ''))
    .filter(namesEarlierStage)

/** The stage among some that a name speaks of: by its own name, or as the only one of its kind. */
export function stageSpokenOf(name: string, stages: readonly StageDraft[]): StageDraft | undefined {
  const key = nameKey(name)
  const named = stages.find(stage => nameKey(stage.name) === key)
  if (named) return named
  const words = kindWordsOf(name)
  const same = stages.filter(stage => kindWordsOf(stage.name).some(word => words.includes(word)))
  return same.length === 1 ? same[0] : undefined
}

/** The earlier stage that a line takes; `all of the poolish` where the only one that ferments is a sponge. */
function sourceOf({ ingredient, share }: LineDraft, earlier: readonly StageDraft[]): StageDraft | undefined {
  const named = stageSpokenOf(ingredient, earlier)
  if (named || share === undefined) return named
  const kind = kindOf(tokensOf(ingredient))
  const same = earlier.filter(stage => kind !== undefined && stage.kind === kind)
  return same.length === 1 ? same[0] : undefined
}

/** What a line weighs, where its amount is a weight or a measure the larder knows. */
function gramsOfLine({ amount, ingredient }: LineDraft, larder: Larder): number | undefined {
  const [, number = '', unit = ''] = /^([\d./ ]+) (\D+)$/.exec(amount) ?? []
  const read = number === '' ? undefined : numberAt(tokensOf(number), 0)
  if (!read) return undefined
  if (unit in weightUnits) return read.value * weightUnits[unit as keyof typeof weightUnits]
  const known = larder.find(ingredient)
  const one = known && gramsPerMeasure(known, unit as Measure)
  return one === undefined ? undefined : one * read.value
}

/** What lines weigh together, where all of them can be weighed. */
function gramsOf(lines: readonly LineDraft[], larder: Larder): number | undefined {
  const weights = lines.map(line => gramsOfLine(line, larder))
  return weights.reduce<number | undefined>(
    (sum, grams) => (sum === undefined || grams === undefined ? undefined : sum + grams),
    0,
  )
}

/** What lines took of each stage, as they were read. */
type Takings = Map<StageDraft, LineDraft[]>

/** The amount of a share of a stage, and what is said of it. */
function shareOfStage(
  share: number | 'rest',
  source: StageDraft,
  taken: readonly LineDraft[],
  larder: Larder,
): { amount: string; said: string } | undefined {
  const all = gramsOf(source.lines, larder)
  const others = share === 'rest' ? gramsOf(taken, larder) : 0
  if (all === undefined || others === undefined) return undefined
  const grams = share === 'rest' ? all - others : all * share
  if (grams <= 0) return undefined
  const inGrams = (value: number): string => `${numberText(Number(value.toFixed(2)))} g`
  const amount = inGrams(grams)
  const lines = `its lines add to ${inGrams(all)}`
  if (grams === all) return { amount, said: `All of ${source.name} was taken: ${lines}.` }
  if (share === 'rest')
    return {
      amount,
      said: `The rest of ${source.name} was taken: ${lines}, ${inGrams(others)} of it taken before.`,
    }
  return {
    amount,
    said: `${numberText(Number((share * 100).toFixed(1)))} % of ${source.name} was taken: ${lines}.`,
  }
}

/** A line that speaks of an earlier stage takes its name; where nothing says how much, it takes all of it. */
function refer(line: LineDraft, source: StageDraft, takings: Takings, larder: Larder): void {
  const written = line.ingredient
  line.ingredient = source.name
  const besides = tokensOf(written)
    .filter(t => t.kind === 'word' && !only.has(t.key) && !kindWordsOf(source.name).includes(t.key))
    .map(t => t.text)
  if (nameKey(written) !== nameKey(source.name) && besides.length > 0)
    line.note = [besides.join(' '), line.note].filter(Boolean).join(', ')
  const taken = takings.get(source) ?? []
  takings.set(source, [...taken, line])
  const share = line.share ?? (line.guesses.length === 0 ? 1 : undefined)
  if (line.amount !== '' || share === undefined) return
  const found = shareOfStage(share, source, taken, larder)
  if (!found) return
  line.amount = found.amount
  line.guesses.push(found.said)
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
  const takings: Takings = new Map()
  const settle = (line: LineDraft, stage: StageDraft, at: number): void => {
    const earlier = stages.slice(Math.max(0, at - 40), at)
    const source = earlier.length > 0 ? sourceOf(line, earlier) : undefined
    if (source) refer(line, source, takings, larder)
    else seed(line, stage)
    if (line.amount === '' && line.guesses.length === 0)
      line.guesses.push(`No amount is given for ${line.ingredient}: type one.`)
    if (/^(levure|yeast|dry yeast|levure s[eè]che)$/i.test(line.ingredient) && !line.known)
      line.guesses.push('Fresh, active dry and instant yeast differ: say which it is.')
  }
  // the rest of a stage is what all other lines left of it
  for (const rests of [false, true])
    stages.forEach((stage, at) => {
      for (const line of stage.lines) if ((line.share === 'rest') === rests) settle(line, stage, at)
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
