import { millilitres } from '../../dough/lexicon/units.js'
import { isName, readCell } from '../values/amount-cells.js'
import { isStageName, isTotalWord, totalOf } from '../values/labels.js'
import type { Names } from './row-features.js'
import { amountUses, isAmountUse } from './table-cells.js'
import type { ColumnUse, ForeignRow, Guess } from './types.js'
import { stageOver } from './views.js'
import { headingUse, isPrice, isUnit } from './vocabulary.js'
import type { ColumnReason, Reason } from './words.js'

const cellIn = ({ cells }: ForeignRow, at: number): string => cells[at] ?? ''

/** What each of the first columns holds. */
export const looksOf = (rows: readonly ForeignRow[], width: number, names: Names) =>
  Array.from({ length: width }, (_, at) => looksAt(rows, at, names))

export type Looks = ReturnType<typeof looksAt>

function looksAt(rows: readonly ForeignRow[], at: number, names: Names) {
  const values: (number | undefined)[] = [] // of its numbers, row by row
  const sizes: (number | undefined)[] = [] // … and of its measures, in millilitres
  const texts = new Set<string>()
  const [known, stages]: [string[], string[]] = [[], []] // names of ingredients, and of stages
  // numbers are with or without a unit, `bare` of those without any, `percents` with a sign of per cent; `units` are nothing else
  const looks = {
    at,
    filled: 0,
    numbers: 0,
    bare: 0,
    percents: 0,
    units: 0,
    volumes: 0,
    totals: 0,
    prices: 0,
  }
  for (const row of rows) {
    const cell = cellIn(row, at)
    const read = cell === '' || isName(cell) ? undefined : readCell(cell, 'g', '.')
    values.push(read?.is === 'quantity' ? (read.grams ?? (read.percent ?? 0) * 100) : undefined)
    const measure = read?.is === 'quantity' ? millilitres[read.unit as keyof typeof millilitres] : undefined
    sizes.push(measure && read?.is === 'quantity' ? read.value * measure : values.at(-1))
    if (cell === '') continue
    looks.filled++
    texts.add(cell)
    if (read?.is === 'quantity' || read?.is === 'nothing') {
      looks.numbers++
      if (read.is === 'quantity' && read.bare) looks.bare++
      if (read.is === 'quantity' && read.percent !== undefined) looks.percents++
      if (read.is === 'quantity' && read.unit in millilitres) looks.volumes++
    } else if (isPrice(cell)) looks.prices++
    else if (isUnit(cell)) looks.units++
    else if (isTotalWord(cell)) looks.totals++
    else if (isStageName(cell)) stages.push(cell)
    else if (names.kind(cell) !== undefined || names.find(cell)) known.push(cell)
  }
  return { ...looks, known, stages, different: texts.size, values, sizes }
}

const isOfNumbers = ({ filled, numbers }: Looks): boolean => filled > 0 && numbers * 2 >= filled
const isOfWords = ({ filled, numbers }: Looks): boolean => filled > 0 && numbers * 2 < filled

/** 1, 2, 3 … */
function countsRows({ bare, filled, values }: Looks): boolean {
  const counted = values.filter(value => value !== undefined)
  return counted.length > 2 && bare === filled && counted.every((value, i) => value === counted[0]! + i)
}

/** Do the flours of this column add to 100? */
function addsToHundred({ values }: Looks, labels: readonly string[], { kind }: Names): boolean {
  const flours = values.filter(
    (value, row) =>
      value !== undefined && kind(labels[row]!) === 'flour' && totalOf(labels[row]!) === undefined,
  )
  const sum = flours.reduce<number>((total, value) => total + value!, 0)
  return flours.length > 0 && [1, 2, 3, 4].some(times => Math.abs(sum - 100 * times) < 0.5)
}

/** Are these cells and those after them the halves of numbers that a comma took apart? */
function isBrokenNumber(body: readonly ForeignRow[], at: number): boolean {
  const both = body.filter(row => cellIn(row, at + 1) !== '')
  return (
    both.length > 0 &&
    both.every(
      row => /^\d{1,4}$/.test(cellIn(row, at)) && /^\d{1,3}\s*(?:%|\p{L}{1,3})?$/u.test(cellIn(row, at + 1)),
    )
  )
}

/** The columns whose headings name different stages, `Levain | Final dough (g)`, where there are several. */
function stageColumnsIn(headings: readonly string[], looks: readonly Looks[]): number[] {
  const columns = [...headings.keys()].filter(
    at => isStageName(stageOver(headings[at]!)?.stage ?? '') && looks[at] && isOfNumbers(looks[at]),
  )
  const said = columns.map(at => stageOver(headings[at]!)!)
  const stages = new Set(said.map(({ stage }) => stage.toLowerCase()))
  const different = new Set(said.map(({ stage, use }) => `${stage.toLowerCase()}\t${use}`))
  return stages.size > 1 && different.size === columns.length ? columns : []
}

/** Where tables stand side by side, the columns of their names: known ingredients, and numbers behind them. */
export function besideIn(headings: readonly string[], looks: readonly Looks[]): readonly number[] {
  const isHeaded = (at: number) => headingUse(headings[at] ?? '') === 'ingredient'
  const starts = looks.flatMap(one => {
    const { at, filled, totals, known, stages } = one
    const isKnown = known.length > 0 && (known.length + stages.length) * 2 > filled - totals
    return isKnown || (isHeaded(at) && isOfWords(one)) ? [at] : []
  })
  const size = (starts[1] ?? 0) - (starts[0] ?? 0)
  const isAgain = (start: number, nth: number) =>
    start === starts[0]! + nth * size &&
    looks.slice(start + 1, start + size).some(isOfNumbers) &&
    looks
      .slice(start, start + size)
      .every((_, i) => headingUse(headings[start + i] ?? '') === headingUse(headings[starts[0]! + i] ?? ''))
  // of different shapes only where the headings of all say that they begin
  const isOther = (start: number, nth: number) =>
    isHeaded(start) && looks.slice(start + 1, starts[nth + 1] ?? looks.length).some(isOfNumbers)
  return starts.length > 1 && (starts.every(isAgain) || starts.every(isOther)) ? starts : []
}

/** What a column can be read as: how likely, why, whether it should be asked, and whether it can be at all. */
type Candidate = readonly [score: number, use: ColumnUse, why: ColumnReason, asks: boolean, can: boolean]
interface Chosen {
  readonly column: number
  readonly score: number
  readonly use: ColumnUse
  readonly guess: Guess
}

const inStep = 1.35 // spoons are rounded
const isLeftOut = (one: Chosen | undefined): boolean =>
  one?.use === 'leave out' && ['unknown', 'headingTaken'].includes(one.guess.reason.code)

const weightUses = amountUses.filter(use => use !== 'percent')
const severalTimes: readonly ColumnUse[] = ['leave out', 'note', 'of a stage']

/** Weighs what each column can be read as, by its heading and by what it holds; of all the likeliest that go together. */
export class ColumnGuesser {
  readonly uses: readonly ColumnUse[]
  readonly guesses: readonly Guess[]
  readonly batches: readonly number[] // columns that hold the same for batches of several sizes, the first read
  readonly #candidates: Chosen[] = []
  readonly #ingredient: number

  constructor(
    readonly headings: readonly string[],
    readonly body: readonly ForeignRow[],
    readonly looks: readonly Looks[],
    delimiter: string,
    readonly names: Names,
  ) {
    const headed = this.looks.map(({ at }) => headingUse(headings[at] ?? ''))
    // `Component | Ingredient`: what repeats in front of the names is what they are parts of
    const [part, name] = looks.filter(({ at }) => headed[at] === 'ingredient')
    const isPart = part && name && !headed.includes('stage') && part.different * 2 <= part.filled
    if (isPart && name.different > part.different) headed[part.at] = 'stage'
    const ofStages = stageColumnsIn(headings, this.looks)
    for (const one of looks) this.#headed(one, headed[one.at], ofStages)
    this.#named(headed)
    this.#ingredient = this.#likeliest().findIndex(chosen => chosen?.use === 'ingredient')
    for (const one of looks.filter(({ at }) => headed[at] === undefined))
      if (isOfWords(one)) this.#words(one)
      else if (isOfNumbers(one)) this.#numbers(one, ofStages.length > 0)
    const hasAmounts = this.#likeliest().some(chosen => isAmountUse(chosen?.use))
    // better a percentage of the whole dough, asked about, than no amounts at all
    if (ofStages.length === 0 && !hasAmounts && headed.includes('other percent'))
      this.#offer(headed.indexOf('other percent'), [[4, 'percent', 'ofWholeDough', true, true]])
    if (delimiter === ',') this.#brokenNumbers(headed)
    const read = this.#likeliest().findIndex(one => isAmountUse(one?.use) && one?.use !== 'percent')
    const others = looks.filter(({ at }) => this.#isOfAnotherBatch(at, read, headed[at]))
    this.batches = others.length > 0 ? [read, ...others.map(({ at }) => at)] : []
    const { use } = this.#likeliest()[read] ?? {}
    for (const at of this.batches)
      this.#offer(at, [
        [at === read ? 990 : 980, at === read ? use! : 'leave out', 'ofOneBatch', false, true],
      ])
    const chosen = this.#likeliest()
    this.uses = chosen.map(one => one?.use ?? 'leave out')
    this.guesses = chosen.flatMap(one => (one ? [one.guess] : []))
  }

  /** Does a column behind the one that is read hold the same for a batch of another size? */
  #isOfAnotherBatch(at: number, read: number, use: ReturnType<typeof headingUse>): boolean {
    const [ours, theirs] = [this.looks[read], this.looks[at]]
    const isLeft = use !== 'percent' && isLeftOut(this.#likeliest()[at])
    if (!ours || !theirs || at <= read || !isLeft || !isOfNumbers(theirs)) return false
    const times = theirs.sizes.flatMap((size, row) => (size && ours.sizes[row] ? size / ours.sizes[row] : []))
    const [least, most] = [Math.min(...times), Math.max(...times)]
    const isInStep = most <= least * inStep && (least > 1 || most < 1)
    return times.length > 1 && times.length * 3 > theirs.filled * 2 && isInStep
  }

  #offer(column: number, candidates: readonly Candidate[], figures: object = {}): void {
    const named = { heading: this.headings[column] ?? '', at: column }
    for (const [score, use, code, ask, can] of candidates) {
      // the figures are those that the sentence of the code needs
      const reason = { column: named, ...figures, code } as unknown as Reason
      if (can) this.#candidates.push({ column, score, use, guess: { about: 'column', column, ask, reason } })
    }
  }

  /** Of each column the likeliest candidate that no likelier one of another column stands against. */
  #likeliest(): (Chosen | undefined)[] {
    const chosen: (Chosen | undefined)[] = this.looks.map(() => undefined)
    const taken = new Set<ColumnUse>()
    for (const one of this.#candidates.toSorted((a, b) => b.score - a.score || a.column - b.column)) {
      const { column, use, guess } = one
      const against = isAmountUse(use) && taken.has('of a stage')
      const isSecond = guess.reason.code === 'plainNumbers' && weightUses.some(other => taken.has(other))
      const again = taken.has(use) && !severalTimes.includes(use) && !this.#isOtherMeasure(one, chosen)
      if (chosen[column] || against || isSecond || again) continue
      chosen[column] = one
      taken.add(use)
    }
    return chosen
  }

  /** Volumes beside weights are the same amounts in another measure. */
  #isOtherMeasure({ column, use }: Chosen, chosen: readonly (Chosen | undefined)[]): boolean {
    const isOfVolumes = (at: number) => this.looks[at]!.volumes * 2 > this.looks[at]!.numbers
    const before = chosen.filter(one => one?.use === use)
    return use === 'amount' && before.every(one => isOfVolumes(one!.column) !== isOfVolumes(column))
  }

  #headed(looks: Looks, use: ReturnType<typeof headingUse>, ofStages: readonly number[]): void {
    const { at, filled, prices } = looks
    const isKept = use !== undefined && use !== 'leave out' && use !== 'other percent'
    const isAmount = isAmountUse(use)
    // `Parts` over numbers is no part of a dough
    const isOfOther = isKept && !isAmount && use !== 'unit' && use !== 'note' && isOfNumbers(looks)
    const asks = isAmount && filled > 0 && !isOfNumbers(looks)
    const candidates: Candidate[] = [
      [950, 'leave out', 'prices', false, prices * 2 > filled],
      [900, 'of a stage', 'ofOneStage', false, ofStages.includes(at)],
      [800, 'leave out', 'headingLeftOut', false, use === 'leave out'],
      [790, 'leave out', 'ofNoStage', false, isAmount && ofStages.length > 0],
      [780, 'leave out', 'headingTaken', true, isKept],
      [3, 'leave out', 'ofWholeDough', true, use === 'other percent'],
    ]
    if (isKept && !isOfOther) candidates.push([800, use, 'headingSays', asks, true])
    this.#offer(at, candidates, { use })
  }

  /** The column of names, where no heading tells: the one with the most ingredients in it. */
  #named(headed: readonly ReturnType<typeof headingUse>[]): void {
    if (headed.includes('ingredient')) return
    const texts = this.looks.filter(
      looks => headed[looks.at] === undefined && isOfWords(looks) && looks.units * 2 < looks.filled,
    )
    for (const { at, known, different } of texts) {
      const score = 100 + known.length + different / 1000
      const why = known.length > 0 ? 'knownNames' : 'names'
      this.#offer(at, [[score, 'ingredient', why, known.length === 0, true]], { example: known[0] })
    }
    // a heading that may mean the bread may mean what goes into it
    const named = headed.findIndex(use => use === 'formula' || use === 'stage')
    if (texts.length === 0 && named >= 0) this.#offer(named, [[850, 'ingredient', 'onlyNames', true, true]])
  }

  /** Other columns of words: units, stages, the names of formulas, notes. */
  #words({ at, filled, units, stages, different }: Looks): void {
    const hasHeadings = this.headings.length > 0
    const isBefore = at < this.#ingredient
    const ofIngredient = this.looks[this.#ingredient]?.filled ?? 0
    const isRepeated = different * 2 <= filled || filled * 3 <= ofIngredient
    const hasStages = stages.length * 2 > filled || (isBefore && stages.length > 0)
    const candidates: Candidate[] = [
      [60, 'unit', 'units', false, units * 2 > filled],
      [55, 'stage', 'stageNames', false, hasStages],
      [40, 'formula', 'repeatedNames', true, isBefore && isRepeated && !hasHeadings],
      [30, 'note', 'notes', hasHeadings, at > this.#ingredient],
      [1, 'leave out', 'unknown', true, true],
    ]
    this.#offer(at, candidates, { example: stages[0] })
  }

  #numbers(looks: Looks, hasStages: boolean): void {
    const { at, numbers, bare, percents } = looks
    const heading = this.headings[at] ?? ''
    const labels = this.body.map(row => cellIn(row, this.#ingredient))
    const isOfOne = isStageName(heading) || (isTotalWord(heading) && this.headings.some(isStageName))
    this.#offer(at, [
      [95, 'leave out', 'ofNoStage', false, hasStages],
      [92, 'leave out', 'oneStageOnly', true, isOfOne],
      [90, 'percent', 'perCentSigns', false, percents * 2 > numbers],
      [85, 'leave out', 'rowNumbers', false, at === 0 && countsRows(looks)],
      [80, 'amount', 'amountsWithUnits', false, bare < numbers],
      [70, 'percent', 'floursOfHundred', true, addsToHundred(looks, labels, this.names)],
      [60, 'grams', 'plainNumbers', true, true],
      [1, 'leave out', 'unknown', true, true],
    ])
  }

  /** `69,5` and `1,000 g` between commas have become two cells. Such columns are not read before somebody has looked. */
  #brokenNumbers(headed: readonly (string | undefined)[]): void {
    const isIn = this.#likeliest().map(chosen => chosen !== undefined && chosen.use !== 'leave out')
    for (let at = 0; at + 1 < isIn.length; at++) {
      if (isAmountUse(headed[at + 1]) || !isIn[at] || !isBrokenNumber(this.body, at)) continue
      for (const column of [at, at + 1]) {
        isIn[column] = false
        this.#offer(column, [[1000, 'leave out', 'brokenNumber', true, true]])
      }
    }
  }
}
