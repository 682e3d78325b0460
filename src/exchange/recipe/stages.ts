import { gramsIn } from '../../dough/amounts/measures.js'
import { type Line, type Meaning, nameKey, newId, type Stage } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { guessCountsAs, isGrain } from '../../dough/larder/counts-as-guess.js'
import { numberText } from '../../dough/lexicon/digits.js'
import { wholeAmount } from '../../dough/lexicon/quantities.js'
import { figureOf } from '../../dough/lexicon/written-figures.js'
import { unnamed } from '../csv/columns.js'
import { EarlierStages, finalAmong, isForDough, type Source } from '../values/earlier-stages.js'
import { isOfTotals } from '../values/labels.js'
import { isShort } from '../values/line-names.js'
import { earlierStageWords, type StageKind } from '../values/stage-kinds.js'
import { sumOf } from '../values/written-weights.js'
import type { Found } from './segment.js'
import type { LineReason } from './words.js'

const inRounding = 0.02

/** A line while the recipe is being read; `row` is 1-based. */
export type LineDraft = ReturnType<typeof draftOf>
export const draftOf = (found: Found, row: number, larder: Larder) => ({
  ...found,
  id: newId(),
  row,
  guesses: [...found.guesses],
  said: [...found.said],
  /** What it weighs, where its amount is a weight or a measure the larder knows. */
  get grams(): number | undefined {
    const quantity = wholeAmount(this.amount)
    const figure = quantity && figureOf(quantity, () => '')
    return figure && gramsIn(figure, larder.find(this.ingredient))
  },
})

/** A stage while the recipe is being read; one without a name is what no heading is over. */
export class StageDraft implements Source<LineDraft> {
  readonly lines: LineDraft[] = []
  isTold = false // it is one even without lines
  isTaken = false
  taken: number | undefined = 0 // grams of it by lines

  constructor(
    public name: string,
    readonly kind: StageKind | undefined,
    readonly heading: { readonly row: number; readonly source: string } | undefined, // where it is opened
  ) {}

  get grams(): number | undefined {
    return sumOf(this.lines.map(line => line.grams))
  }
}

/** The stages that hold something, the final dough last. */
export function inOrder(stages: readonly StageDraft[]): StageDraft[] {
  const used = stages.filter(stage => stage.lines.length > 0 || stage.isTold)
  const final = used.findLast(stage => stage.isTold) ?? finalAmong(used)
  if (!final) return []
  const ordered = [...used.filter(stage => stage !== final), final]
  ordered.forEach((stage, at) => {
    if (stage.name === '') stage.name = stage === final ? unnamed.stage : `Stage ${at + 1}`
  })
  return ordered
}

/**
 * `Overall formula` beside stages that say the same once more, each ingredient by its sum, is no stage: its lines are taken
 * out of it, and are the answer.
 */
export function overallIn(stages: readonly StageDraft[]): readonly LineDraft[] {
  const overall = stages.find(({ name, lines }) => lines.length > 1 && isOfTotals(name))
  if (!overall) return []
  const sums = new Map<string, (number | undefined)[]>()
  for (const line of stages.flatMap(stage => (stage === overall ? [] : stage.lines))) {
    const key = nameKey(line.ingredient)
    const sum = sums.get(key)
    if (sum) sum.push(line.grams)
    else sums.set(key, [line.grams])
  }
  const isSaid = ({ ingredient, grams }: LineDraft) => {
    const sum = sumOf(sums.get(nameKey(ingredient)) ?? [])
    return grams !== undefined && sum !== undefined && Math.abs(sum - grams) <= grams * inRounding
  }
  return overall.lines.every(isSaid) ? overall.lines.splice(0) : []
}

/** Names lines after the earlier stages they take, and says how much where the text does not. */
export function takeStages(stages: readonly StageDraft[], larder: Larder): void {
  const earlier = new EarlierStages<LineDraft, StageDraft>(stages)
  /** A line that speaks of an earlier stage takes its name; where nothing says how much, it takes all of it. */
  const refer = (line: LineDraft, source: StageDraft) => {
    const isOther = line.known && nameKey(line.ingredient) !== nameKey(source.name)
    line.note = [earlier.besides(line.ingredient, source), line.note].filter(Boolean).join(', ')
    line.ingredient = source.name
    const share = line.share ?? (line.guesses.length === 0 ? 1 : undefined)
    if (line.amount === '' && share !== undefined) takeShare(line, share, source, isOther)
    source.isTaken = true
    source.taken = sumOf([source.taken, line.grams])
  }
  // the rest of a stage is what all other lines left of it
  for (const isRest of [false, true])
    earlier.each((line, source, stage) => {
      if ((line.share === 'rest') !== isRest) return
      if (source) refer(line, source)
      else seed(line, stage)
    })
  // what is made for the dough goes into it, though no line of the text says so
  const final = stages.at(-1)
  if (!final || (final.kind !== 'dough' && final.kind !== undefined)) return
  const added: LineDraft[] = []
  for (const { stage, like } of earlier.left(
    one => Boolean(one.heading) && isForDough(one) && !one.isTaken,
  )) {
    const { name, heading } = stage
    if (like) {
      like.guesses.push({ code: 'perhapsTaken', like: like.ingredient, stage: name })
      refer(like, stage)
      continue
    }
    const guesses: LineReason[] = [{ code: 'takenByNoLine', stage: name, into: final.name }]
    const { row, source } = heading!
    const line = draftOf(
      { ingredient: name, known: false, amount: '', note: '', guesses, said: [], source },
      row,
      larder,
    )
    takeShare(line, 1, stage)
    added.push(line)
  }
  final.lines.unshift(...added)
}

/** What an amount weighs by itself. */
function weightOf(amount: string): number | undefined {
  const quantity = wholeAmount(amount)
  return quantity && figureOf(quantity, () => 'g').grams
}

function takeShare(line: LineDraft, share: number | 'rest', source: StageDraft, isOther = false): void {
  const { grams } = source
  const before = share === 'rest' ? source.taken : 0
  if (grams === undefined || before === undefined) return
  const kept = line.less === undefined ? 0 : weightOf(line.less)
  if (kept === undefined) return
  const takes = (share === 'rest' ? grams - before : grams * share) - kept
  if (takes <= 0) return
  line.amount = `${numberText(Number(takes.toFixed(2)))} g`
  const of = { stage: source.name, grams }
  if (kept > 0) line.guesses.push({ code: 'allButTaken', ...of, kept })
  else if (share === 'rest' && before > 0) line.guesses.push({ code: 'restTaken', ...of, before })
  else if (share === 'rest' || share === 1) {
    const isSure = line.share === 1 && isWeighed(source) && !isOther // `soaked raisins, all`
    ;(isSure ? line.said : line.guesses).push({ code: 'allTaken', ...of })
  } else line.guesses.push({ code: 'shareTaken', ...of, share })
}

/** Is all of it weighed, and nothing measured? */
const isWeighed = ({ lines }: StageDraft): boolean => lines.every(({ amount }) => /\d k?g$/.test(amount))

/** A stage is not made of itself: what bears its name in it is the starter it is built from. */
function seed(line: LineDraft, { name, kind }: StageDraft): void {
  const { ingredient: written, known, note } = line
  const isItself = nameKey(written) === nameKey(name)
  const isLevain = !known && earlierStageWords(written).some(word => /^(?:levain|leaven|chef)$/.test(word))
  if (kind !== 'ferments' || !(isItself || isLevain)) return
  const as = nameKey(name) === 'ripe starter' ? 'Sourdough starter' : 'Ripe starter'
  line.guesses.push({ code: 'starterWithin', written, stage: name, as })
  line.note = [written, note].filter(Boolean).join(', ')
  line.ingredient = as
}

const anyYeast = /^(levure|yeast|dry yeast|levure s[eè]che)$/i
const mixture = /(?<!\p{L})(?:and|et|or|ou|almond|amandes?|hazelnut|noisettes?|coconut|coco|nut)(?!\p{L})/iu

/** Asks for what is missing in lines, and gives what those unknown to the larder count as, by their names. */
export function asked(stages: readonly StageDraft[], larder: Larder): Meaning[] {
  const meanings = new Map<string, Meaning>()
  const names = new Set(stages.map(stage => nameKey(stage.name)))
  // `HAM` among `FLOUR` and `WATER` is no more than large
  const isMixed = stages.some(stage => stage.lines.some(({ source }) => /\p{Ll}{5}/u.test(source)))
  for (const { ingredient, amount, known, guesses, said } of stages.flatMap(stage => stage.lines)) {
    if (amount === '' && guesses.length === 0) guesses.push({ code: 'noAmount', ingredient })
    if (!known && isShort(ingredient) && isMixed) guesses.push({ code: 'writtenShort', ingredient })
    if (anyYeast.test(ingredient) && !known) guesses.push({ code: 'whichYeast' })
    const key = nameKey(ingredient)
    const isKnown = names.has(key) || larder.find(ingredient) !== undefined || mixture.test(ingredient)
    const kind = isKnown ? undefined : guessCountsAs(ingredient)
    if (!kind || kind === 'other') continue
    // that flour counts as flour is in no doubt
    const isPlain = kind !== 'starter' && !isGrain(ingredient)
    ;(isPlain ? said : guesses).push({ code: 'countsAs', ingredient, kind })
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
