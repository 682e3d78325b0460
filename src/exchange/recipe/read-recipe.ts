import { type Formula, nameKey, newId, type Problem, usualFlourWeight } from '../../dough/document/formula.js'
import { type Larder, larderOf } from '../../dough/document/larder.js'
import { usualLarder } from '../../dough/larder/usual-larder.js'
import { unnamed } from '../csv/columns.js'
import { type Heading, inlineStage, isDefinite, type StageKind } from './headings.js'
import { namesBread, stageKinds, verbs } from './kitchen-words.js'
import { larderName } from './larder-names.js'
import { bare, joined } from './name.js'
import { inSentence, sentencesOf } from './prose.js'
import { type Row, rowOf } from './row-text.js'
import { type Looks, looksOf } from './rows.js'
import type { Found } from './segment.js'
import {
  draftOf,
  inOrder,
  meaningsOf,
  type StageDraft,
  settleLines,
  stageOf,
  stageSpokenOf,
} from './stages.js'

/** One line that was read, with the text it comes from. */
export interface RecipeLine {
  readonly lineId: string
  readonly row: number // 1-based
  readonly source: string // exact text of the recipe
  readonly ingredient: string
  readonly amount: string // decimal point; '' where it has to be asked for
  readonly note: string
  readonly guesses: readonly string[] // sentences on what was guessed or is to be asked; to be confirmed
  readonly said: readonly string[] // … on what is certain: a second measure that agrees
}

/** A row of which no line was made. */
export interface RestOfRecipe {
  readonly row: number
  readonly text: string
  readonly as: 'heading' | 'step' | 'note' | 'blank' | 'not understood'
  readonly why?: string
}

/** What a recipe's text came to. Every row is among the lines or in the rest, never in both. */
export interface RecipeRead {
  readonly formula: Formula
  readonly lines: readonly RecipeLine[]
  readonly rest: readonly RestOfRecipe[]
  readonly problems: Problem[]
}

const longestRow = 20_000 // characters; no recipe has such a row
const isTooLong = (text: string): boolean => text.length > longestRow && text.trim() !== ''

const usual = larderOf(usualLarder)

/** An ingredient of which only the name is written. */
const named = (ingredient: string, source: string): Found => ({
  ingredient,
  known: false,
  amount: '',
  note: '',
  guesses: [],
  said: [],
  source,
})

class RecipeReader {
  readonly looks: readonly Looks[]
  readonly rest: RestOfRecipe[] = []
  readonly problems: Problem[] = []
  readonly stages: StageDraft[] = []
  readonly #byName = new Map<string, StageDraft>()
  readonly #notes: string[] = []
  readonly #firstList: number
  readonly #after: (Looks['as'] | undefined)[] // what the next row that is not blank looks like
  #title: string | undefined
  #stage: StageDraft
  #mode: 'lines' | 'method' | 'notes' = 'lines'
  #last: RestOfRecipe['as'] | 'line' | undefined

  constructor(
    readonly texts: readonly string[],
    readonly larder: Larder,
  ) {
    this.looks = texts.map((_, at) => looksOf(this.#rowAt(at), larder))
    this.#firstList = this.looks.findIndex(l => l.as === 'list' && l.found.some(f => f.amount !== ''))
    this.#after = new Array(texts.length)
    let next: Looks['as'] | undefined
    for (let i = texts.length - 1; i >= 0; i--) {
      this.#after[i] = next
      const looks = this.looks[i]!
      const isListHead = looks.as === 'heading' && looks.heading.opens === 'ingredients'
      if (looks.as !== 'blank' && !isListHead) next = looks.as
    }
    this.#stage = this.#open('', undefined)
  }

  /** Taken apart anew each time: few rows are asked for again, and thousands kept would cost more. */
  #rowAt(at: number): Row {
    const text = this.texts[at]!
    return rowOf(isTooLong(text) ? '' : text)
  }

  #open(name: string, kind: StageKind | undefined): StageDraft {
    const key = nameKey(name)
    let stage = this.#byName.get(key)
    if (!stage) {
      stage = { name, kind, lines: [] }
      this.#byName.set(key, stage)
      this.stages.push(stage)
    }
    return stage
  }

  #put(at: number, as: RestOfRecipe['as'], why?: string): void {
    const text = this.texts[at]!
    this.rest.push({ row: at + 1, text, as, ...(why ? { why } : {}) })
    if (as !== 'blank') this.#last = as
    if (as === 'step' || as === 'note') this.#notes.push(text.trim())
    if (as === 'not understood')
      this.problems.push({
        where: { row: at + 1 },
        severity: 'warning',
        code: 'recipeRowNotUnderstood',
        message: `Row ${at + 1}: ${why}`,
      })
  }

  #lines(at: number, found: readonly Found[], stage = this.#stage): void {
    const text = this.texts[at]!
    for (const one of found)
      stage.lines.push(draftOf(one, at + 1, found.length === 1 ? text.trim() : one.source))
    this.#last = 'line'
  }

  #linesFollow = (at: number): boolean => this.#after[at] === 'list' || this.#after[at] === 'name'
  #isBlankBefore = (at: number): boolean => at === 0 || this.looks[at - 1]!.as === 'blank'

  read(): void {
    this.looks.forEach((looks, at) => {
      if (isTooLong(this.texts[at]!))
        this.#put(at, 'not understood', 'It is too long for a row of a recipe. Break it into several.')
      else this.#row(looks, at)
    })
  }

  #row(looks: Looks, at: number): void {
    if (looks.as === 'blank') return this.#put(at, 'blank')
    if (looks.as === 'heading' && this.#heading(looks.heading, looks.sure, at)) return
    if (looks.as === 'name' && this.#isStageAgain(at, looks.found.ingredient)) return
    if (looks.as === 'name' && this.#isTitle(at)) {
      this.#title = looks.found.ingredient
      return this.#put(at, 'heading')
    }
    if (this.#mode !== 'lines') return this.#put(at, this.#mode === 'method' ? 'step' : 'note')
    switch (looks.as) {
      case 'fact':
        return this.#put(at, 'note')
      case 'sentence':
        return this.#sentence(at)
      case 'list': {
        const stage = looks.stage ? this.#open(looks.stage.name, looks.stage.kind) : this.#stage
        if (looks.stage?.kind === 'dough') this.#stage = stage
        return this.#lines(at, looks.found, stage)
      }
      case 'name':
        return this.#lines(at, [looks.found])
      default:
        return this.#other(at)
    }
  }

  /** A stage's name that is also the larder's: `Starter` over its own lines. */
  #isStageAgain(at: number, ingredient: string): boolean {
    const { words, bulleted } = this.#rowAt(at)
    const kind = words.length === 1 && !bulleted ? stageKinds.get(words[0]!.key) : undefined
    if (!kind || !this.#isBlankBefore(at) || !this.#linesFollow(at) || this.#byName.has(nameKey(ingredient)))
      return false
    this.#stage = this.#open(ingredient, kind)
    this.#put(at, 'heading')
    return true
  }

  get #isFirst(): boolean {
    return this.#title === undefined && this.#last === undefined
  }

  /** A first row alone over the ingredients names the bread, though the larder may have one of that name. */
  #isTitle(at: number): boolean {
    const { words, bulleted } = this.#rowAt(at)
    const keys = words.map(t => t.key)
    const isStage = keys.some(key => stageKinds.has(key)) && !namesBread(keys)
    return (
      this.#isFirst && this.looks[at + 1]?.as === 'blank' && this.#linesFollow(at) && !bulleted && !isStage
    )
  }

  /** A row among the lines of a stage that names one read before takes that one; it opens none. */
  #speaksOfStage(name: string, at: number): boolean {
    if (this.#last !== 'line') return false
    const before = this.stages.filter(stage => stage !== this.#stage && stage.lines.length > 0)
    const { words } = this.#rowAt(at)
    return stageSpokenOf(name, before) !== undefined || (isDefinite(words[0]) && !this.#isBlankBefore(at))
  }

  #heading(heading: Heading, sure: boolean, at: number): boolean {
    const follow = this.#linesFollow(at)
    if (heading.opens !== 'stage') {
      if (heading.opens === 'ingredients') this.#mode = 'lines'
      else if (!follow || this.#firstList >= 0) this.#mode = heading.opens === 'method' ? 'method' : 'notes'
      this.#put(at, 'heading')
      return true
    }
    const { name, kind, remark } = heading
    if (
      this.#isFirst &&
      (kind === undefined || !follow || (this.#isTitle(at) && (!sure || this.#rowAt(at).heading))) &&
      !(sure && follow && this.#rowAt(at).tokens.at(-1)!.text === ':')
    ) {
      const inBrackets = remark && this.texts[at]!.includes('(')
      this.#title =
        remark && !inBrackets
          ? this.texts[at]!.replace(/^[\s#*_=]+/, '')
              .slice(0, 200)
              .trim()
          : name
      if (inBrackets) this.#notes.push(remark)
      this.#put(at, 'heading')
      return true
    }
    if (this.#mode !== 'lines') {
      if (!follow || !(sure || kind)) return false
      this.#mode = 'lines'
    }
    if (!sure && this.#speaksOfStage(name, at)) {
      this.#lines(at, [named(name, this.texts[at]!)])
      return true
    }
    const prose = this.#after[at] === 'sentence' && kind !== undefined && this.#firstList < 0
    const opens = (follow && (sure || kind !== undefined || this.#isBlankBefore(at))) || prose
    if (!opens && !sure) return false
    if (opens && !(kind === undefined && larderName(this.larder, name))) this.#stage = this.#open(name, kind)
    if (remark) this.#notes.push(`${name}: ${remark}`)
    else if (!opens) this.#notes.push(name)
    this.#put(at, 'heading')
    return true
  }

  #sentence(at: number): void {
    const row = this.#rowAt(at)
    const amounts = row.quantities.some(q => q.terms[0].unit)
    if (this.#firstList < 0 || at < this.#firstList) {
      let count = 0
      for (const { from, to } of sentencesOf(row)) {
        const stage = inlineStage(row, from, to)
        const found = inSentence(row, this.larder, from, to)
        const into = stage ? this.#open(stage.name, stage.kind) : this.#stage
        for (const one of found) into.lines.push(draftOf(one, at + 1, one.source))
        count += found.length
      }
      if (count > 0) {
        this.#notes.push(row.text.trim())
        this.#last = 'line'
        return
      }
    }
    const does = row.words.some(t => verbs.has(t.key)) || row.hasNoAmount || row.numbered
    this.#put(at, does ? 'step' : 'note', amounts ? 'The amounts in it were not taken as lines.' : undefined)
  }

  /** A row that looks like nothing: a title, an ingredient among others, or not understood. */
  #other(at: number): void {
    const row = this.#rowAt(at)
    if (this.#last === 'step' || this.#last === 'note' || row.when !== undefined) return this.#put(at, 'note')
    const name = joined(bare(row.tokens.slice(0, 40)))
    const among = this.#last === 'line' && !this.#isBlankBefore(at) && row.quantities.length === 0
    if (among && name !== '' && row.words.length > 0 && row.words.length <= 5) {
      return this.#lines(at, [named(name, row.text)])
    }
    if (this.#isFirst && row.words.length > 0 && row.quantities.length === 0) {
      this.#title = name
      return this.#put(at, 'heading')
    }
    const what =
      row.quantities.length > 0
        ? 'It has an amount and no ingredient.'
        : 'It names no amount and no ingredient known.'
    this.#put(at, 'not understood', `${what} Write it as “20 g salt”, or leave it out.`)
  }

  finish(): RecipeRead {
    const stages = inOrder(this.stages)
    settleLines(stages, this.larder)
    const meanings = meaningsOf(stages, this.larder)
    const formula: Formula = {
      id: newId(),
      name: this.#title || unnamed.formula,
      note: this.#notes.join('\n'),
      flourWeight: usualFlourWeight,
      stages:
        stages.length > 0
          ? stages.map((stage, at) => stageOf(stage, at === stages.length - 1))
          : [{ id: newId(), name: unnamed.stage, lines: [] }],
      meanings,
      keptSettings: [],
    }
    const lines = stages
      .flatMap(stage => stage.lines)
      .sort((a, b) => a.row - b.row)
      .map(
        ({ id, row, source, ingredient, amount, note, guesses, said }): RecipeLine => ({
          lineId: id,
          row,
          source,
          ingredient,
          amount,
          note,
          guesses,
          said,
        }),
      )
    if (lines.length === 0)
      this.problems.unshift({
        where: {},
        severity: 'error',
        code: 'recipeWithoutIngredient',
        message: 'No ingredient was found in this text. Write each with its amount: 500 g flour.',
      })
    return { formula, lines, rest: this.rest, problems: this.problems }
  }
}

/**
 * Reads a recipe, as prose or as a list, in English or French. Never throws. Headings become stages, with
 * the final dough last; steps, yields and notes go into the formula's note. What was guessed is said on its
 * line, and amounts nobody can know are left empty.
 */
export function readRecipe(text: string, larder: Larder = usual): RecipeRead {
  const reader = new RecipeReader(text.replace(/^\ufeff/, '').split(/\r\n|\n|\r|\u2028|\u2029/), larder)
  reader.read()
  return reader.finish()
}
