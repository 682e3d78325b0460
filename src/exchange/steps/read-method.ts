import { newId, type Step } from '../../dough/document/formula.js'
import type { Worded } from '../../engine/index.js'
import { bakeNames, isAside, stepOf } from './clause-steps.js'
import { type Clause, clausesOf, saidIn, wordsOf } from './clauses.js'
import type { MethodStage } from './lines-in-words.js'
import { levelled, sentencesOf, type Tongue, tongueOf, withoutLead } from './sentences.js'
import { type StepDraft, stepText } from './step-draft.js'
import { bakingBeside, timesBeside } from './times-beside.js'
import { StageFinder } from './which-stage.js'
import { type StepReason, stepReason } from './words.js'

/** A row of a method, by its number in the text. */
export interface MethodRow {
  readonly row: number
  readonly text: string
  readonly stage?: number // beneath whose lines it stands, or which it is said to be of
  readonly minutes?: number | undefined // stated beside its words
  readonly step?: Omit<Step, 'id'> | undefined // that it is, for certain
}

/** A step that was read, with the words it comes from. */
export interface MethodStep {
  readonly row: number // where its words begin
  readonly source: string // the words of the recipe, as they stand
  readonly stage: number // which of the stages it belongs to
  readonly step: Step // its note has the words where they say more than the step
  readonly guesses: readonly Worded[] // what was guessed or is to be asked; to be confirmed
}

/** What a method came to. Every sentence is among the words of a step or left. */
export interface MethodRead {
  readonly steps: readonly MethodStep[] // in the order they are done within their stage
  readonly left: readonly MethodRow[] // headings and remarks that are of no step
  readonly heads: ReadonlySet<number> // rows of them that only name the stage of what follows
}

const longestRow = 20_000 // characters; no method has such a row
const mostRows = 2000
const foldable = new Set(['', 'bulk', 'ferment', 'rise', 'rest', 'proof'])
const during =
  /\b(?:during|meanwhile|in\s+the\s+meantime|while|in\s+this\s+time|over|pendant|durant|entre-temps)\b/
const oven = new Set(['uncover', 'lower'])

/** What a row says at a glance: that something is done, and a time. */
export function lookOf(text: string): { readonly isWork: boolean; readonly hasTime: boolean } {
  const { actions, lengths } = saidIn(levelled(text.slice(0, longestRow).normalize('NFC')), 'english')
  const isWork = actions.some(({ action: { kind } }) => kind !== 'minor' && kind !== 'aside')
  return { isWork, hasTime: lengths.some(({ use, words }) => use === 'length' && words !== 'few') }
}

/** Makes steps of the rows of a method, one after the other. */
class MethodReader {
  readonly steps: StepDraft[] = []
  readonly left: MethodRow[] = []
  readonly heads = new Set<number>()
  readonly #finder: StageFinder
  #context: string | undefined // what a heading says is done in the rows beneath it
  #preheat: StepDraft['heat']
  readonly #latest = new Map<number, StepDraft>() // the last step of each stage
  #isByStage = false // an earlier stage has rows beneath its own lines

  constructor(
    readonly stages: readonly MethodStage[],
    readonly tongue: Tongue,
  ) {
    this.#finder = new StageFinder(stages)
  }

  row({ row, text, stage, minutes, step }: MethodRow, next: MethodRow | undefined): void {
    if (step) return this.#certain(row, text, step, stage ?? this.stages.length - 1)
    if (stage !== undefined) {
      this.#isByStage ||= stage !== this.stages.length - 1
      if (this.#isByStage) this.#finder.head(stage)
    }
    if (text.length > longestRow || text.trim() === '') return void this.left.push({ row, text })
    if (minutes === undefined ? this.#heading(row, text, next) : this.#onlyTime(row, text, minutes)) return
    const before = this.steps.length
    for (const sentence of sentencesOf(
      row,
      this.#context ? `${this.#context}: ${withoutLead(text)}` : text,
    )) {
      // the heading's words are of no step
      for (const clause of clausesOf(sentence, this.tongue)) this.#clause(clause)
    }
    this.#context = undefined
    if (minutes !== undefined) timesBeside(minutes, this.steps.slice(before), this.tongue)
  }

  /** Words that name nothing to be done, with a time beside them: something waits. */
  #onlyTime(row: number, text: string, minutes: number): boolean {
    const plain = levelled(text.normalize('NFC'))
    const { actions, lengths, folds } = saidIn(plain, this.tongue)
    if (
      folds ||
      lengths.length > 0 ||
      actions.some(({ action: { kind } }) => kind !== 'minor' && kind !== 'aside')
    )
      return false
    const { stage } = this.#finder.find(plain, actions)
    this.#put({
      ...this.#rest(row, stage, withoutLead(text), { least: minutes, most: minutes }),
      saysMore: true,
    })
    this.#latest.get(stage)!.reasons.push({ code: 'kindByTime' })
    return true
  }

  #rest(row: number, stage: number, words: string, length: StepDraft['length']): StepDraft {
    const does = this.tongue === 'french' ? 'Repos' : 'Rest'
    const step = { row, stage, key: 'rest', does, kind: 'wait' } as const
    return { ...step, words: [words], saysMore: false, length, adds: [], reasons: [] }
  }

  #certain(row: number, text: string, step: Omit<Step, 'id'>, stage: number): void {
    const { does, kind, note } = step
    this.#put({
      ...{ row, stage, does, kind, note, key: '', words: [text], saysMore: false, adds: [], reasons: [] },
      asTyped: step.text,
    })
  }

  /** A row over others: it names a stage, a part of the work, or nothing that is done. */
  #heading(row: number, text: string, next: MethodRow | undefined): boolean {
    const bare = withoutLead(text)
    const plain = levelled(bare.normalize('NFC').replaceAll('**', ''))
    const words = plain.match(/[\p{L}\d'-]+/gu) ?? []
    const isMarked = /^\s*#{1,6}\s|^\s*\*\*.*\*\*:?\s*$|:\s*$/.test(text)
    const isNumbered = !isMarked && bare !== text.trim()
    const { lengths, heats } = saidIn(plain, this.tongue)
    if (words.length === 0) return this.#leave(row, text)
    if (words.length > 8 || lengths.some(({ words: night }) => !night) || heats.length > 0) return false
    if (isNumbered || (!isMarked && (words.length > 4 || /[.!?]\s*$/.test(plain)))) return false
    if (this.#finder.heading(plain.replace(/[:\s]+$/, '')) !== undefined) {
      this.heads.add(row)
      return this.#leave(row, text)
    }
    const [action] = saidIn(plain, this.tongue).actions
    if (!action) return isMarked || words.length <= 3 ? this.#leave(row, text) : false
    if (action.action.kind === 'minor') return isMarked ? this.#leave(row, text) : false
    if (!next) return false
    const below = saidIn(levelled(next.text.normalize('NFC')), this.tongue)
    const isNamed = below.actions.some(({ action: { kind }, isOrder }) => isOrder && kind !== 'minor')
    if (!isNamed && below.lengths.length === 0) return isMarked ? this.#leave(row, text) : false
    if (!isNamed) this.#context = bare.replace(/[:*\s]+$/, '')
    return this.#leave(row, text)
  }

  #leave(row: number, text: string): true {
    this.left.push({ row, text })
    return true
  }

  #clause(clause: Clause): void {
    const { sentence } = clause
    const plain = sentence.plain.slice(clause.from, clause.to)
    const found = this.#finder.find(plain, clause.main)
    const before = this.#latest.get(found.stage)
    this.#waitBefore(clause, before, found.stage)
    const draft = isAside(clause) ? undefined : stepOf(clause, this.tongue)
    if (!draft) return this.#remark(clause, before)
    draft.stage = found.stage
    if (found.isGuess) draft.reasons.push({ code: 'stageNotSaid', stage: this.stages[found.stage]!.name })
    if (this.#joinsFolds(draft, clause, before, plain)) return
    this.#lines(draft, clause, plain)
    this.#oven(draft, clause, before)
    if (draft.kind === 'wait' && draft.length === undefined && draft.asTyped === undefined) {
      if (!draft.folds) ask(draft, { code: 'noTime' })
      else {
        const within = clause.lengths.find(({ use }) => use === 'within')
        const minutes = within?.most ?? draft.folds.times * draft.folds.every
        draft.length = { least: minutes, most: minutes }
        if (!within) ask(draft, { code: 'foldsLength' })
      }
    }
    this.#put(draft)
  }

  #put(draft: StepDraft): void {
    this.steps.push(draft)
    this.#latest.set(draft.stage, draft)
  }

  /** `After 30 minutes, add the salt`: a wait that is said with what comes after it. */
  #waitBefore(clause: Clause, before: StepDraft | undefined, stage: number): void {
    const after = clause.lengths.find(({ use, words }) => use === 'after' && !words)
    if (!after || clause.folds) return
    const said = clause.sentence.text.slice(after.from, after.to)
    const length = { least: after.least, most: after.most }
    if (before && before.kind !== 'hands') {
      if (before.length === undefined && before.asTyped === undefined) {
        before.length = length
        before.reasons = before.reasons.filter(({ code }) => code !== 'noTime')
        before.reasons.push({ code: 'waitBefore', said })
      }
      return
    }
    if (!before || clause.main.every(({ action }) => oven.has(action.key))) return
    const rest = this.#rest(clause.sentence.row, stage, said, length)
    this.#put({ ...rest, reasons: [{ code: 'waitBefore', said }] })
  }

  /** What tells something is kept with the step before it. */
  #remark(clause: Clause, before: StepDraft | undefined): void {
    const words = wordsOf(clause)
    if (words === '') return
    const step = before ?? this.steps.at(-1)
    if (!step) return void this.left.push({ row: clause.sentence.row, text: words })
    step.words.push(words)
    step.saysMore = true
    const [heat] = clause.heats
    if (step.kind === 'bake' && heat && step.heat && Math.abs(heat.celsius - step.heat.celsius) > 1)
      step.reasons.push({ code: 'severalHeats', others: heat.text })
  }

  /** Folds that come during the wait before them are of that wait. */
  #joinsFolds(draft: StepDraft, clause: Clause, before: StepDraft | undefined, plain: string): boolean {
    const { folds } = draft
    if (!folds || !before || draft.key !== 'fold') return false
    if (clause.folds?.isRepeated && before.key === 'fold' && before.kind === 'hands') {
      before.kind = 'wait'
      before.folds = folds
      const minutes = folds.times * folds.every
      before.length = { least: minutes, most: minutes }
      before.reasons.push(...draft.reasons, { code: 'foldsLength' })
    } else {
      const isLong = before.length === undefined || before.length.most >= folds.times * folds.every
      if (before.kind !== 'wait' || before.folds || !foldable.has(before.key) || !isLong || before.inFridge)
        return false
      if (before.asTyped !== undefined || draft.length) return false
      before.folds = folds
      before.reasons.push(...draft.reasons.filter(({ code }) => code !== 'stageNotSaid'))
      if (!during.test(plain)) before.reasons.push({ code: 'foldsJoined' })
    }
    before.words.push(...draft.words)
    before.saysMore = true
    return true
  }

  /** The lines that go in at the step: at the first of a stage all that no other names. */
  #lines(draft: StepDraft, { main }: Clause, plain: string): void {
    const names = this.#finder.names[draft.stage]!
    const takes = main.some(({ action }) => action.takes || action.key === 'knead')
    if (!takes) return
    const isFirst = !this.#latest.has(draft.stage)
    const { lines, unsure } = names.named(plain)
    const free = lines.filter(line => !names.entered.has(line))
    for (const line of lines) names.entered.add(line)
    if (isFirst) return
    const called = free.flatMap(line => names.calledOf(line) ?? [])
    draft.adds = called
    if (unsure !== undefined && called.length === 0 && main.some(({ action }) => action.key === 'add'))
      ask(draft, { code: 'whichLine', word: unsure })
    const isAdding = draft.key === 'add' && called.length === 1 && main.length === 1
    if (isAdding) draft.does = `${draft.does} ${called[0]!.toLowerCase().replace(/ \(\d+\)$/, '')}`
  }

  #oven(draft: StepDraft, clause: Clause, before: StepDraft | undefined): void {
    if (draft.key === 'preheat') {
      const [heat] = clause.heats
      if (heat) this.#preheat = { text: heat.text, celsius: heat.celsius }
    }
    if (draft.kind !== 'bake' || draft.asTyped !== undefined) return
    const [bare, covered, uncovered] = bakeNames[this.tongue]
    if (draft.does === uncovered && before?.does === bare) before.does = covered
    if (!draft.heat && before?.kind === 'bake' && before.heat) {
      draft.heat = before.heat
      ask(draft, { code: 'heatFromBefore' })
    } else if (!draft.heat && this.#preheat) {
      draft.heat = this.#preheat
      ask(draft, { code: 'heatFromPreheat', said: this.#preheat.text.replace(/^(?:at|à) /, '') })
    } else if (!draft.heat) ask(draft, { code: 'noOvenHeat' })
    if (!draft.length && !draft.reasons.some(({ code }) => code === 'fewMinutes'))
      ask(draft, { code: 'noTime' })
  }
}

const ask = (draft: StepDraft, reason: StepReason): void => void draft.reasons.push(reason)

function stepRead(draft: StepDraft, tongue: Tongue): MethodStep {
  const { row, stage, does, kind, words, saysMore, reasons } = draft
  const source = words.join(' ')
  const text = stepText(draft, tongue)
  const step: Step = { id: newId(), does, kind, text, note: draft.note ?? (saysMore ? source : '') }
  const seen = new Set<string>()
  const guesses = reasons
    .filter(({ code }) => !seen.has(code) && seen.add(code))
    .map(reason => stepReason(reason))
  return { row, source, stage, step, guesses }
}

/**
 * Reads the rows of a recipe's method, English or French, numbered, bulleted or prose, as steps of its stages (the last
 * is the final dough): what is done, by hand, waited for or baked, with the times, temperatures and repetitions the
 * words state, and the lines they name for certain. `baking`: minutes that all of it bakes, where the recipe says so. What was
 * guessed has a reason with its code. Never throws.
 */
export function readMethod(
  rows: readonly MethodRow[],
  stages: readonly MethodStage[],
  baking?: number,
): MethodRead {
  const some = rows.slice(0, mostRows)
  const join = (texts: readonly string[]) =>
    texts
      .map(text => text.slice(0, 2000))
      .join(' ')
      .normalize('NFC')
  const tongue = tongueOf(join(some.map(({ text }) => text)), join(stages.flatMap(({ lines }) => lines)))
  const reader = new MethodReader(stages.length > 0 ? stages : [{ name: '', lines: [] }], tongue)
  for (const [i, row] of some.entries()) reader.row(row, some[i + 1])
  if (baking !== undefined) bakingBeside(baking, reader.steps)
  return {
    steps: reader.steps.map(draft => stepRead(draft, tongue)),
    left: [...reader.left, ...rows.slice(mostRows)],
    heads: reader.heads,
  }
}
