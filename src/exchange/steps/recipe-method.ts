import { type Step, sameName } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import type { Worded } from '../../engine/index.js'
import { lookOf, type MethodRow, readMethod } from './read-method.js'
import type { ToldRow } from './told-row.js'

/** What a row may be. */
export type Kind =
  | 'title'
  | 'stage'
  | 'list' // the heading of one
  | 'method' // … of the steps
  | 'remarks' // … of notes
  | 'line'
  | 'amount' // of the name on the row beside it
  | 'step'
  | 'note'
  | 'fact' // of the whole: a yield, a total, a time
  | 'unknown'

/** A step that was read, with the words of the recipe it comes from. */
export interface RecipeStep {
  readonly stepId: string // in the method of its stage
  readonly row: number // 1-based, where its words begin
  readonly source: string // the recipe's own words
  readonly guesses: readonly Worded[] // what was guessed or is to be asked; to be confirmed
}

/** A stage as far as a method is read beside it. */
interface NamedStage {
  readonly name: string
  readonly lines: readonly { readonly ingredient: string }[]
}

/** What a recipe says besides its lines, where it stands in a row of the text. */
export interface NoteAt {
  readonly row?: number
  readonly text: string
}

/** What the rows of a method came to. */
interface MethodOfRecipe {
  readonly steps: readonly RecipeStep[]
  readonly methods: readonly (readonly Step[])[] // of each stage
  readonly isIn: (row: number) => boolean // whether all that a row says is in the method
  readonly beside: (notes: readonly NoteAt[]) => string[] // what of the notes is not in it
}

/** A row of it, and the stage beneath whose lines it stands. */
interface RowUnder extends MethodRow {
  readonly under: NamedStage | undefined
  readonly told?: ToldRow | undefined
}

/** The rows of a recipe that tell what is done, in their order. */
export class MethodRows {
  readonly #rows: RowUnder[] = []
  readonly #facts: RowUnder[] = [] // `8–10 hours at 22 °C` beneath a levain's lines, `Bulk 60 minutes` outside any method
  #baking: number | undefined // minutes of the whole recipe
  #isOpen = false // a heading or a step has opened the method
  #under: NamedStage | undefined

  /** Takes a row by what it was read as; false where it is of no method. `stage`: whose lines are being read. */
  take(
    kind: Kind,
    row: number,
    text: string,
    stage: NamedStage,
    more: { opens?: boolean; inSentence?: boolean; told?: ToldRow | undefined } = {},
  ): boolean {
    const isOf = this.#isOf(kind, text, stage, more)
    const { told } = more
    this.#baking ??= told?.baking
    const { isWork, hasTime } = lookOf(text)
    if (isOf) this.#rows.push({ row, text, under: this.#under, told })
    else if (kind !== 'line' && kind !== 'amount' && hasTime && (isWork || this.#under))
      this.#facts.push({ row, text, under: this.#under })
    return isOf
  }

  #isOf(
    kind: Kind,
    text: string,
    stage: NamedStage,
    { opens, inSentence }: { opens?: boolean; inSentence?: boolean },
  ): boolean {
    if (kind === 'step') this.#isOpen = true
    else if (kind === 'method' || kind === 'title' || kind === 'list' || kind === 'remarks') {
      this.#isOpen = kind === 'method'
      this.#under = undefined
    } else if (kind === 'stage' && opens) this.#isOpen = false
    else if (kind === 'line') {
      this.#isOpen = inSentence === true
      if (!inSentence) this.#under = stage
      return this.#isOpen && lookOf(text).isWork
    } else if (kind === 'fact' || kind === 'unknown') {
      const { isWork, hasTime } = lookOf(text)
      return this.#isOpen && isWork && hasTime
    }
    return this.#isOpen
  }

  /** The steps of the rows, in the stages of the recipe; the last of them is the final dough. */
  read(stages: readonly NamedStage[], larder: Larder): MethodOfRecipe {
    const isFlour = (name: string) => larder.find(name)?.countsAs?.kind === 'flour'
    const isEarlier = ({ under }: RowUnder) => under !== undefined && under !== stages.at(-1)
    const facts = this.#rows.length > 0 ? this.#facts.filter(isEarlier) : this.#facts
    const all = stages.length > 0 ? [...this.#rows, ...facts] : [] // what has no lines is no formula
    const told = all
      .sort((a, b) => a.row - b.row)
      .map(({ row, text, under, told }): MethodRow => {
        const { stage: of, minutes, step } = told ?? {}
        const named = of === undefined ? -1 : stages.findIndex(({ name }) => sameName(name, of))
        const stage = named >= 0 ? named : under ? stages.indexOf(under) : -1
        return { row, text, minutes, step, ...(stage >= 0 && { stage }) }
      })
    const { steps, left, heads } = readMethod(
      told,
      stages.map(({ name, lines }) => ({
        name,
        lines: lines.map(({ ingredient }) => ingredient),
        flours: new Set(lines.flatMap(({ ingredient }, at) => (isFlour(ingredient) ? [at] : []))),
      })),
      this.#baking,
    )
    const methods = stages.map((): Step[] => [])
    for (const { stage, step } of steps) methods[stage]!.push(step)
    const rows = new Set(told.map(({ row }) => row))
    const isIn = (row: number) => steps.length > 0 && rows.has(row)
    const inPart = new Map<number, string>() // what is not in it of rows that are
    for (const { row, text } of left)
      if (!heads.has(row)) inPart.set(row, [inPart.get(row), text].filter(Boolean).join(' '))
    return {
      steps: steps.map(({ step, row, source, guesses }) => ({ stepId: step.id, row, source, guesses })),
      methods,
      isIn,
      beside: notes =>
        notes.flatMap(({ row, text }) => (row === undefined || !isIn(row) ? text : (inPart.get(row) ?? []))),
    }
  }
}
