import { type Formula, nameKey, newId, type Problem, usualFlourWeight } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { larderName } from '../../dough/larder/spelled-names.js'
import { larderWith } from '../../dough/larder/usual-larder.js'
import { tokensOf } from '../../dough/lexicon/text-tokens.js'
import type { Worded } from '../../engine/index.js'
import { unnamed } from '../csv/columns.js'
import { type Kind, MethodRows, type NoteAt, type RecipeStep } from '../steps/recipe-method.js'
import type { ToldRow } from '../steps/told-row.js'
import { kindOf } from '../values/stage-kinds.js'
import { type Candidate, Candidates, candidate, nameAlone } from './candidates.js'
import { isCorrection } from './clues.js'
import type { StageHeading } from './headings.js'
import { bestWay } from './neighbours.js'
import { withSteps } from './numbering.js'
import { foundIn } from './pieces.js'
import { batchesOf, type Row, rowOf, rowOfBatch } from './recipe-row.js'
import { bareUnitIn } from './said-unit.js'
import type { Found } from './segment.js'
import { asked, draftOf, inOrder, overallIn, StageDraft, stageOf, takeStages } from './stages.js'
import { type LineReason, lineReason, type RestReason, recipeProblem, restReason } from './words.js'

/** One line that was read, with the text it comes from; no amount (`''`) is one that has to be asked for. */
export interface RecipeLine extends Omit<Found, 'guesses' | 'said'> {
  readonly id: string // of the formula's line
  readonly row: number // 1-based
  readonly guesses: readonly Worded<LineReason>[] // what was guessed or is to be asked; to be confirmed
  readonly said: readonly Worded<LineReason>[] // what is certain: a second measure that agrees
}

/** A row of which no line was made. */
export interface RestOfRecipe {
  readonly row: number
  readonly text: string
  readonly as: 'heading' | 'step' | 'note' | 'amount' | 'blank' | 'not understood'
  readonly why?: Worded<RestReason>
  readonly inMethod?: true // steps were made of it
}

/** What a recipe's text came to. Every row is among the lines or in the rest, never in both. */
export interface RecipeRead {
  readonly formula: Formula
  readonly lines: readonly RecipeLine[]
  readonly steps: readonly RecipeStep[] // of the stages' methods, each beside its words
  readonly rest: readonly RestOfRecipe[]
  readonly batches: number // whose amounts stand side by side; 1 of most recipes
  readonly problems: Problem[]
}

const longestRow = 20_000 // characters; no recipe has such a row
const longestTitle = 200
const mostGap = 9
const fewRows = 4
const certain = 100 // more than all that can speak for a candidate

type Fate = RestOfRecipe['as']
const fates: Readonly<Partial<Record<Kind, Fate>>> = {
  ...{ title: 'heading', stage: 'heading', list: 'heading', method: 'heading', remarks: 'heading' },
  ...{ step: 'step', note: 'note', fact: 'note', amount: 'amount' },
}

/** A row with text, and what it was taken for. */
interface ReadRow {
  readonly at: number // among all rows
  readonly row: Row
  readonly as: Candidate
  readonly why?: RestReason | undefined
  readonly told?: ToldRow | undefined
}

type Told = ReadonlyMap<number, ToldRow>

/** What a row is, where that is known. */
function known({ is, name }: ToldRow): Candidate {
  const stage = name === undefined ? {} : { stage: { name, kind: kindOf(tokensOf(name)), remark: '' } }
  return { ...candidate(is, [], stage), score: certain }
}

/** What the rows with text were taken for, by the amounts of one batch where they are of several. */
function readRows(texts: readonly string[], larder: Larder, batch: number, told: Told) {
  const all = texts.flatMap((text, at) => {
    const row = text.length > longestRow || text.trim() === '' ? undefined : rowOf(text)
    return row && (told.has(at + 1) || row.tokens.some(t => t.kind !== 'mark')) ? [{ at, row }] : []
  })
  const batches = batchesOf(all.map(({ row }) => row))
  const bareUnit = bareUnitIn(all.map(({ row }) => row))
  const unit = bareUnit ? { bareUnit } : {}
  const filled = withSteps(all).map(({ at, row, isStep }) => ({
    at,
    row: { ...rowOfBatch(row, Math.min(batch, batches - 1), batches), ...unit },
    isStep,
  }))
  const gaps = filled.map(({ at }, i) => (i === 0 ? mostGap : at - filled[i - 1]!.at - 1))
  // blank rows between nearly all rows part nothing
  const isSpaced = gaps.filter(gap => gap > 0).length > filled.length * 0.8 && filled.length > fewRows
  const apart = gaps.map(gap => gap > (isSpaced ? 1 : 0))
  const rows = filled.map(({ row }) => row)
  const steps = new Set(filled.flatMap(({ row, isStep }) => (isStep ? [row] : [])))
  const candidates = new Candidates(larder, rows, apart, steps).all().map((all, i) => {
    const one = told.get(filled[i]!.at + 1)
    return one ? [known(one)] : all
  })
  const read = bestWay(candidates, apart).map((as, i): ReadRow => {
    const { at, row } = filled[i]!
    return { at, row, as, why: whyOf(as.kind, row), told: told.get(at + 1) }
  })
  // names get the amounts that stand on the rows beside them
  read.forEach(({ as, row }, i) => {
    if (as.kind !== 'amount') return
    const at = i > 0 && nameAlone(read[i - 1]!.as) ? i - 1 : i + 1
    const name = read[at]!
    const written = nameAlone(name.as)!
    const [found] = foundIn({ ...rowOf(`${row.text.trim()} ${name.row.text.trim()}`), ...unit }, larder)
    read[at] = {
      ...name,
      as: { ...name.as, parts: [{ found: [{ ...(found ?? written), source: written.source }] }] },
    }
    read[i] = { ...read[i]!, why: { code: 'amountOfRow', row: name.at + 1 } }
  })
  return { rows: read, batches }
}

/** What is to be said of a row of which no line is made. */
function whyOf(kind: Kind, { quantities }: Row): RestReason | undefined {
  if (kind === 'unknown') return { code: quantities.length > 0 ? 'noIngredient' : 'nothingKnown' }
  const isText = kind === 'step' || kind === 'note'
  return isText && quantities.some(q => q.terms[0].unit) ? { code: 'amountsNotTaken' } : undefined
}

const mostCorrections = 5 // rows of a text that are looked at

/** `EDIT: the salt should be 17 g`: the lines that such a row names are asked about. */
function askCorrected(stages: readonly StageDraft[], corrections: readonly Row[]): void {
  for (const { text, words, quantities } of corrections.slice(0, mostCorrections)) {
    if (!quantities.some(q => q.terms[0].unit)) continue
    const said = new Set(words.map(t => t.key))
    for (const line of stages.flatMap(stage => stage.lines))
      if (tokensOf(line.ingredient).every(t => t.kind !== 'word' || said.has(t.key)))
        line.guesses.push({ code: 'corrected', ingredient: line.ingredient, typed: text.trim() })
  }
}

/** Makes a formula of rows that were read. */
class Draft {
  readonly rest: RestOfRecipe[] = []
  readonly #stages = new Map<string, StageDraft>()
  readonly #notes: NoteAt[] = []
  readonly #corrections: Row[] = []
  readonly #lines = new Map<number, string>() // the texts of rows of lines
  readonly #method = new MethodRows()
  #title = ''
  #stage = this.#open({ name: '', kind: undefined }, undefined)

  constructor(readonly larder: Larder) {}

  #open({ name, kind }: Pick<StageHeading, 'name' | 'kind'>, heading: StageDraft['heading']): StageDraft {
    const stage = this.#stages.get(nameKey(name)) ?? new StageDraft(name, kind, heading)
    this.#stages.set(nameKey(name), stage)
    return stage
  }

  /** Adds a row; `isOver` says whether lines follow it. */
  add(
    { at, row: read, as: { kind, stage, parts = [], inSentence }, why, told }: ReadRow,
    isOver: boolean,
  ): void {
    const { text } = read
    if (kind === 'note' && isCorrection(read)) this.#corrections.push(read)
    const row = at + 1
    const heading = { row, source: text.trim() }
    if (kind === 'line') {
      this.#lines.set(row, text)
      this.#method.take(kind, row, text, this.#stage, { inSentence: inSentence === true })
      if (inSentence) this.#notes.push({ row, text: text.trim() })
      const isWhole = !inSentence && parts.length === 1 && parts[0]!.found.length === 1
      for (const { found, stage } of parts) {
        const into = stage ? this.#open(stage, heading) : this.#stage
        if (stage?.kind === 'dough' && !inSentence) this.#stage = into
        const sources = isWhole ? { source: text.trim() } : {}
        for (const one of found) into.lines.push(draftOf({ ...one, ...sources }, row, this.larder))
      }
      return
    }
    if (kind === 'title') this.#title = this.#titleOf(text, stage!)
    else if (kind === 'stage') {
      const { name, remark } = stage!
      const opens =
        told !== undefined || (isOver && (stage!.kind !== undefined || !larderName(this.larder, name)))
      if (opens) this.#stage = this.#open(stage!, heading)
      if (told) this.#stage.isTold = true
      const isOf = this.#method.take(kind, row, text, this.#stage, { opens })
      if (remark || !opens)
        this.#notes.push({ ...(isOf && { row }), text: remark ? `${name}: ${remark}` : name })
      return this.put(at, text, 'heading', why)
    }
    const isOf = this.#method.take(kind, row, text, this.#stage, { told })
    if (kind === 'step' || kind === 'note' || kind === 'fact') this.#notes.push({ row, text: text.trim() })
    const fate = fates[kind] ?? (isOf ? 'step' : 'not understood')
    this.put(at, text, fate, fate === 'step' && kind === 'unknown' ? undefined : why)
  }

  #titleOf(text: string, { name, remark }: StageHeading): string {
    const isBeside = remark !== '' && text.includes('(')
    if (isBeside) this.#notes.push({ text: remark })
    const whole = text.replace(/^[\s#*_=]+/, '').slice(0, longestTitle)
    return remark === '' || isBeside ? name : whole.trim()
  }

  put(at: number, text: string, as: Fate, reason?: RestReason): void {
    const why = reason && restReason(reason)
    this.rest.push({ row: at + 1, text, as, ...(why ? { why } : {}) })
  }

  #problems(): Problem[] {
    const rows = this.rest.filter(({ as, why }) => as === 'not understood' && why)
    return rows.map(({ row, why }) => {
      const problem = recipeProblem({ code: 'recipeRowNotUnderstood', row, why: why!.message })
      return { ...problem, where: { row }, severity: 'warning' }
    })
  }

  finish(): Omit<RecipeRead, 'batches'> {
    for (const { row } of overallIn([...this.#stages.values()]))
      this.put(row - 1, this.#lines.get(row)!, 'note', { code: 'saidBefore' })
    this.rest.sort((a, b) => a.row - b.row)
    const stages = inOrder([...this.#stages.values()])
    takeStages(stages, this.larder)
    askCorrected(stages, this.#corrections)
    const meanings = asked(stages, this.larder)
    const method = this.#method.read(stages, this.larder)
    const formula: Formula = {
      id: newId(),
      name: this.#title || unnamed.formula,
      note: method.beside(this.#notes).join('\n'),
      flourWeight: usualFlourWeight,
      stages:
        stages.length > 0
          ? stages.map((stage, at) => {
              const steps = method.methods[at]!
              return { ...stageOf(stage, at === stages.length - 1), ...(steps.length && { method: steps }) }
            })
          : [{ id: newId(), name: unnamed.stage, lines: [] }],
      meanings,
      keptSettings: [],
    }
    const drafts = stages.flatMap(stage => stage.lines).sort((a, b) => a.row - b.row)
    const lines = drafts.map(
      ({ grams, ...line }): RecipeLine => ({
        ...line,
        guesses: line.guesses.map(lineReason),
        said: line.said.map(lineReason),
      }),
    )
    const taken = new Set(lines.map(line => line.row))
    const rest = this.rest
      .filter(({ row }) => !taken.has(row))
      .map(one => (method.isIn(one.row) ? { ...one, inMethod: true as const } : one))
    const problem = recipeProblem({ code: 'recipeWithoutIngredient' })
    const none: Problem[] = lines.length > 0 ? [] : [{ ...problem, where: {}, severity: 'error' }]
    return { formula, lines, steps: method.steps, rest, problems: [...none, ...this.#problems()] }
  }
}

/**
 * Reads a recipe, as prose or as a list, in English or French. Never throws. Headings become stages, with
 * the final dough last; steps, yields and notes go into the formula's note. What was guessed is said on its
 * line, and amounts nobody can know are left empty. Where amounts for several batches stand side by side, those of one are
 * read: `batch`, from 0. `told`: what is known of rows, by their number from 1.
 */
export function readRecipe(
  text: string,
  larder: Larder = larderWith([]),
  batch = 0,
  told: Told = new Map(),
): RecipeRead {
  const texts = text.replace(/^\ufeff/, '').split(/\r\n|\n|\r|\u2028|\u2029/)
  const { rows, batches } = readRows(texts, larder, batch, told)
  const draft = new Draft(larder)
  let next = 0
  texts.forEach((text, at) => {
    const read = rows[next]
    if (read?.at === at) {
      const below = rows.slice(++next, next + 3).find(r => r.as.kind !== 'list')
      draft.add(read, below?.as.kind === 'line')
    } else if (text.length > longestRow && text.trim() !== '')
      draft.put(at, text, 'not understood', { code: 'tooLong' })
    else draft.put(at, text, 'blank')
  })
  return { ...draft.finish(), batches }
}
