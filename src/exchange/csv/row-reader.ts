import { type Formula, nameKey, newId, type Place, type Problem } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { readCountsAs, sameCountsAs } from '../values/counts-as.js'
import { type DecimalMark, type PlainNumbers, plainAmount, plainNumbers } from '../values/decimals.js'
import { type Column, isFormulaSetting, isStageSetting, unnamed } from './columns.js'
import { addLine, FormulaDraft, type StageDraft } from './formula-draft.js'
import { amountOf, holdsNumbers, isBlank, type Row, settingNumbers } from './row.js'
import { type FinalSetting, readSetting, type StageSetting } from './setting.js'
import { type CsvDiagnostic, csvProblem, type SettingDiagnostic } from './words.js'

/** What a file of formulas came to. */
export interface FormulasRead {
  readonly formulas: Formula[]
  readonly problems: Problem[]
}

const ofLines = [
  'amount',
  'note',
  'counts as',
  'grams',
  'percent',
  'whole dough percent',
  'batch grams',
] as const

/** Rows of a formula file, one after the other, into formulas. */
export class Reader {
  readonly problems: Problem[] = []
  readonly #formulas = new Map<string, FormulaDraft>()
  readonly #ahead: {
    row: Row
    formula: FormulaDraft
    stage: string
    setting: StageSetting | FinalSetting
  }[] = []
  readonly #carried: Record<'formula' | 'stage', Row[]> = { formula: [], stage: [] }
  #mark: DecimalMark = '.'
  #markIsSure = false
  #above: { formula: string; stage: string } | undefined

  constructor(
    readonly columns: ReadonlyMap<Column, number>,
    readonly larder: Larder,
  ) {}

  say(severity: Problem['severity'], diagnostic: CsvDiagnostic, place: Place = {}): void {
    const at = 'row' in diagnostic ? { row: diagnostic.row } : {}
    this.problems.push({ ...csvProblem(diagnostic), where: { ...at, ...place }, severity })
  }

  /** Which decimal mark does the file use? What its numbers show decides, then the delimiter. */
  chooseMark(rows: readonly Row[], delimiter: string): void {
    const seen = { '.': 0, ',': 0 }
    for (const row of rows) {
      const numbers = isBlank(row.setting)
        ? [row.amount, row.grams, row.percent, row['counts as']].map(text => plainNumbers(text, '.'))
        : holdsNumbers(row.stage, row.setting)
          ? [settingNumbers(row.setting, row.amount, '.')]
          : []
      for (const { signs } of numbers) {
        seen['.'] += signs['.']
        seen[','] += signs[',']
      }
    }
    if (seen['.'] === seen[',']) this.#mark = delimiter === ';' && seen['.'] === 0 ? ',' : '.'
    else this.#mark = seen[','] > seen['.'] ? ',' : '.'
    this.#markIsSure = (seen['.'] === 0) !== (seen[','] === 0)
  }

  /** A text with plain numbers, after telling of those that could be read in two ways. */
  numbers(row: Row, plain: PlainNumbers, place: Place): string {
    for (const { typed, read } of plain.doubts) {
      if (this.#markIsSure && read.includes('.')) continue
      this.say('warning', { code: 'numberDoubtful', row: row.number, typed, read }, place)
    }
    return plain.text
  }

  row(row: Row): void {
    const name = this.nameFor(row, 'formula', this.#above?.formula)
    const key = nameKey(name)
    const known = this.#formulas.get(key)
    const formula = known ?? new FormulaDraft(name)
    const above = this.#above && nameKey(this.#above.formula) === key ? this.#above.stage : ''
    this.#above = { formula: name, stage: isBlank(row.stage) ? above : row.stage }
    const taken = this.#take(row, formula, above)
    if (taken && !known) this.#formulas.set(key, formula)
  }

  /** False when the row could not be understood, which is then among the problems. */
  #take(row: Row, formula: FormulaDraft, stageAbove: string): boolean {
    if (!isBlank(row.setting)) return this.setting(row, formula)
    if (!isBlank(row.ingredient)) {
      this.line(row, formula, this.nameFor(row, 'stage', stageAbove))
      return true
    }
    if (ofLines.some(column => !isBlank(row[column]))) {
      this.say('error', { code: 'ingredientMissing', row: row.number })
      return false
    }
    if (!isBlank(row.stage)) formula.stage(row.stage)
    return true
  }

  /** The row's own, or else that of the row above; a file without the column has one without a name. */
  nameFor(row: Row, column: 'formula' | 'stage', above: string | undefined): string {
    if (!isBlank(row[column])) return row[column]
    if (this.columns.has(column)) this.#carried[column].push(row)
    return above || unnamed[column]
  }

  line(row: Row, formula: FormulaDraft, stageName: string): void {
    const stage = formula.stage(stageName)
    const id = newId()
    const { number, ingredient } = row
    const place = { formula: formula.id, stage: stage.id, line: id }
    const plain = plainAmount(amountOf(row), this.#mark)
    const amount = this.numbers(row, plain, place)
    if (plain.bare) this.say('remark', { code: 'unitMissing', row: number, ingredient, amount }, place)
    if (amount === '' && !isBlank(row['whole dough percent']))
      this.say('warning', { code: 'onlyWholeDough', row: number, ingredient }, place)
    else if (amount === '' && !isBlank(row['batch grams']))
      this.say('warning', { code: 'onlyBatchGrams', row: number, ingredient }, place)
    addLine(stage, { id, ingredient, amount, note: row.note })
    if (!isBlank(row['counts as'])) this.meaning(row, formula, stage, place)
  }

  meaning(row: Row, formula: FormulaDraft, stage: StageDraft, place: Place): void {
    const { number, ingredient, 'counts as': text } = row
    const about = { row: number, ingredient, countsAs: text }
    if (formula.isStageBefore(ingredient, stage)) {
      this.say('remark', { code: 'stageCountsAsItself', row: number, ingredient }, place)
      return
    }
    const says = readCountsAs(plainNumbers(text, this.#mark).text)
    if (!says) {
      this.say('warning', { code: 'countsAsNotUnderstood', ...about }, place)
      return
    }
    const usual = this.larder.find(ingredient)?.countsAs
    const said = formula.saidOf(ingredient)
    if (!said) {
      const same = sameCountsAs(says, usual)
      formula.mean(ingredient, same ? undefined : says)
      if (usual && !same) this.say('remark', { code: 'countsAsUnlikeLarder', ...about }, place)
    } else if (!sameCountsAs(said.countsAs ?? usual, says))
      this.say('warning', { code: 'countsAsTwice', ...about }, place)
  }

  setting(row: Row, formula: FormulaDraft): boolean {
    const { number, setting: name } = row
    const place = { formula: formula.id }
    const key = nameKey(name)
    const isStages = isStageSetting(key) && !isFormulaSetting(key)
    const onlyStage = isBlank(row.stage) && isStages && !this.columns.has('stage')
    const stage = onlyStage ? unnamed.stage : row.stage
    const setting = readSetting(row, stage, this.#mark)
    if (setting.kind === 'refused') {
      this.say('error', { ...setting.why, row: number, isKept: false })
      return false
    }
    const isOne = setting.kind !== 'base' && !(setting.kind === 'stage' && setting.many)
    if (isOne && !formula.isNewSetting(stage, name, row.ingredient)) {
      this.say('error', { code: 'settingTwice', row: number, setting: name }, place)
      return false
    }
    if (setting.kind === 'formula') setting.use(formula)
    else if (setting.kind === 'kept') {
      formula.keep(number, setting.kept)
      if (setting.why) this.say(setting.why.severity, { ...setting.why, row: number, isKept: true }, place)
    } else {
      // a base marks the line before it, or else one still to come; the stage itself may still be to come
      const there = setting.kind === 'base' ? formula.findStage(stage) : undefined
      if (!there || setting.kind !== 'base' || !setting.use(there, 'last'))
        this.#ahead.push({ row, formula, stage, setting })
    }
    if (setting.numbers) this.numbers(row, setting.numbers, place)
    if (setting.remark) this.say('remark', { ...setting.remark, row: number, isKept: false }, place)
    return true
  }

  #settleAhead(): void {
    for (const { row, formula, stage, setting } of this.#ahead) {
      const why = whyNot(row, formula, stage, setting)
      if (!why) continue
      const place = { formula: formula.id }
      if (setting.kept) {
        formula.keep(row.number, setting.kept)
        this.say('warning', { ...why, row: row.number, isKept: true }, place)
      } else this.say('error', { ...why, row: row.number, isKept: false }, place)
    }
  }

  finish(): FormulasRead {
    this.#settleAhead()
    for (const column of ['formula', 'stage'] as const) {
      const [first, ...others] = this.#carried[column]
      if (!first) continue
      const about = { row: first.number, others: others.length, column, unnamed: unnamed[column] }
      this.say('remark', { code: 'nameCarried', ...about })
    }
    const rowOf = ({ where }: Problem) => where.row ?? 0
    return {
      formulas: [...this.#formulas.values()].map(draft => draft.finish()),
      problems: this.problems.sort((a, b) => rowOf(a) - rowOf(b)),
    }
  }
}

/** Uses a setting now that all rows are read, or says why it cannot be. */
function whyNot(
  row: Row,
  formula: FormulaDraft,
  stage: string,
  setting: StageSetting | FinalSetting,
): SettingDiagnostic | undefined {
  if (setting.kind === 'final') return setting.use(formula)
  const there = formula.findStage(stage)
  if (!there) return { code: 'settingOfNoStage', setting: row.setting, stage, formula: formula.name }
  if (setting.use(there, 'first')) return undefined
  return { code: 'baseNotFound', ingredient: setting.ingredient ?? '', stage }
}
