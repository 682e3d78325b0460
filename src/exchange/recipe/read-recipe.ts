import { type Formula, nameKey, newId, type Problem, usualFlourWeight } from '../../dough/document/formula.js'
import { type Larder, larderOf } from '../../dough/document/larder.js'
import { usualLarder } from '../../dough/larder/usual-larder.js'
import { unnamed } from '../csv/columns.js'
import { type Candidate, Candidates, isNameAlone } from './candidates.js'
import type { Part } from './found.js'
import type { StageHeading } from './headings.js'
import { larderName } from './larder-names.js'
import { bestWay } from './neighbours.js'
import { foundIn } from './pieces.js'
import type { RestReason } from './reasons.js'
import { type Row, rowOf } from './row.js'
import { draftOf, inOrder, meaningsOf, type StageDraft, settleLines, stageOf } from './stages.js'
import { lineWords, nothingFound, restWords } from './words.js'

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
  readonly as: 'heading' | 'step' | 'note' | 'amount' | 'blank' | 'not understood'
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
const usual = larderOf(usualLarder)

const as = {
  title: 'heading',
  stage: 'heading',
  list: 'heading',
  method: 'heading',
  remarks: 'heading',
  step: 'step',
  note: 'note',
  fact: 'note',
  unknown: 'not understood',
  amount: 'amount',
} as const

/** A row with text, and what it was taken for. */
interface ReadRow {
  readonly at: number // among all rows
  readonly row: Row
  readonly as: Candidate
  readonly amountOf?: number // the row whose name its amount is of, 1-based
}

/** What the rows were taken for, row by row. */
function readRows(texts: readonly string[], larder: Larder): ReadRow[] {
  const filled = texts.flatMap((text, at) => {
    const row = text.length > longestRow ? undefined : rowOf(text)
    return row?.tokens.some(t => t.kind !== 'mark') ? [{ at, row }] : []
  })
  const apart = filled.map(({ at }, i) => i === 0 || filled[i - 1]!.at < at - 1)
  const candidates = new Candidates(larder)
  const ways = bestWay(
    filled.map(({ row }, i) =>
      candidates.of({
        row,
        isFirst: i === 0,
        blankBefore: apart[i]!,
        blankAfter: apart[i + 1] ?? false,
        below: filled[i + 1]?.row,
      }),
    ),
    apart,
  )
  return withAmounts(
    filled.map(({ at, row }, i) => ({ at, row, as: ways[i]! })),
    larder,
  )
}

/** Gives names the amounts that stand on the rows beside them. */
function withAmounts(rows: readonly ReadRow[], larder: Larder): ReadRow[] {
  const read = [...rows]
  rows.forEach((amount, i) => {
    if (amount.as.kind !== 'amount') return
    const at = i > 0 && isNameAlone(read[i - 1]!.as) ? i - 1 : i + 1
    const name = read[at]!
    const [found] = foundIn(rowOf(`${amount.row.text.trim()} ${name.row.text.trim()}`), larder)
    const [written] = name.as.parts![0]!.found
    const parts = [{ found: [{ ...(found ?? written!), source: written!.source }] }]
    read[at] = { ...name, as: { ...name.as, parts } }
    read[i] = { ...amount, amountOf: name.at + 1 }
  })
  return read
}

/** Makes a formula of rows that were read. */
class Draft {
  readonly rest: RestOfRecipe[] = []
  readonly problems: Problem[] = []
  readonly stages: StageDraft[] = []
  readonly #byName = new Map<string, StageDraft>()
  readonly #notes: string[] = []
  #title = ''
  #stage = this.#open({ name: '', kind: undefined })

  constructor(readonly larder: Larder) {}

  #open({ name, kind }: Pick<StageHeading, 'name' | 'kind'>, heading?: StageDraft['heading']): StageDraft {
    const key = nameKey(name)
    let stage = this.#byName.get(key)
    if (!stage) {
      stage = { name, kind, heading, lines: [] }
      this.#byName.set(key, stage)
      this.stages.push(stage)
    }
    return stage
  }

  /** Adds a row; `over` says whether lines follow it. */
  add({ at, row, amountOf, as: { kind, stage, parts = [], inSentence } }: ReadRow, over: boolean): void {
    const { text } = row
    switch (kind) {
      case 'line':
        if (inSentence) this.#notes.push(text.trim())
        return this.#lines(at, text, parts, inSentence === true)
      case 'title':
        this.#title = this.#titleOf(text, stage!)
        break
      case 'stage': {
        const { name, remark } = stage!
        const opens = over && !(stage!.kind === undefined && larderName(this.larder, name))
        if (opens) this.#stage = this.#open(stage!, { row: at + 1, source: text.trim() })
        if (remark) this.#notes.push(`${name}: ${remark}`)
        else if (!opens) this.#notes.push(name)
        break
      }
      case 'step':
      case 'note':
      case 'fact':
        this.#notes.push(text.trim())
    }
    this.put(at, text, as[kind], amountOf ? { code: 'amount of a row', row: amountOf } : whyOf(kind, row))
  }

  #titleOf(text: string, { name, remark }: { name: string; remark: string }): string {
    if (!remark) return name
    if (text.includes('(')) {
      this.#notes.push(remark)
      return name
    }
    return text
      .replace(/^[\s#*_=]+/, '')
      .slice(0, 200)
      .trim()
  }

  put(at: number, text: string, as: RestOfRecipe['as'], why?: RestReason): void {
    const words = why && restWords(why)
    this.rest.push({ row: at + 1, text, as, ...(words ? { why: words } : {}) })
    if (as === 'not understood')
      this.problems.push({ where: { row: at + 1 }, severity: 'warning', message: `Row ${at + 1}: ${words}` })
  }

  #lines(at: number, text: string, parts: readonly Part[], inSentence: boolean): void {
    const isWhole = !inSentence && parts.length === 1 && parts[0]!.found.length === 1
    for (const { found, stage } of parts) {
      const into = stage ? this.#open(stage, { row: at + 1, source: text.trim() }) : this.#stage
      if (stage?.kind === 'dough' && !inSentence) this.#stage = into
      for (const one of found) into.lines.push(draftOf(one, at + 1, isWhole ? text.trim() : one.source))
    }
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
          guesses: guesses.map(lineWords),
          said: said.map(lineWords),
        }),
      )
    if (lines.length === 0)
      this.problems.unshift({
        where: {},
        severity: 'error',
        message: nothingFound,
      })
    const ofLines = new Set(lines.map(line => line.row))
    const rest = this.rest.filter(({ row }) => !ofLines.has(row))
    return { formula, lines, rest, problems: this.problems }
  }
}

/** What is to be said of a row of which no line was made. */
function whyOf(kind: Candidate['kind'], { quantities }: Row): RestReason | undefined {
  if (kind === 'unknown') return { code: quantities.length > 0 ? 'no ingredient' : 'nothing known' }
  const isText = kind === 'step' || kind === 'note'
  return isText && quantities.some(q => q.terms[0].unit) ? { code: 'amounts not taken' } : undefined
}

/**
 * Reads a recipe, as prose or as a list, in English or French. Never throws. Headings become stages, with
 * the final dough last; steps, yields and notes go into the formula's note. What was guessed is said on its
 * line, and amounts nobody can know are left empty.
 */
export function readRecipe(text: string, larder: Larder = usual): RecipeRead {
  const texts = text.replace(/^\ufeff/, '').split(/\r\n|\n|\r|\u2028|\u2029/)
  const rows = readRows(texts, larder)
  const draft = new Draft(larder)
  let next = 0
  texts.forEach((text, at) => {
    const read = rows[next]
    if (read?.at === at) {
      next++
      draft.add(read, rows.slice(next, next + 3).find(r => r.as.kind !== 'list')?.as.kind === 'line')
    } else if (text.length > longestRow && text.trim() !== '')
      draft.put(at, text, 'not understood', { code: 'too long' })
    else draft.put(at, text, 'blank')
  })
  return draft.finish()
}
