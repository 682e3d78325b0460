import { isAmountUse, isName, readCell } from './cells.js'
import { type Names, stageOver } from './row-features.js'
import { type ColumnUse, columnUses, type ForeignRow, type Guess } from './types.js'
import { headingUse, isStageName, isTotalWord, totalOf } from './vocabulary.js'
import type { ColumnReason, Reason } from './words.js'

/** What the cells of a column look like. */
interface Looks {
  readonly at: number
  readonly filled: number
  readonly numbers: number // with or without a unit
  readonly bare: number // of those, without any
  readonly percents: number // of those, with a sign of per cent
  readonly units: number // cells that are a unit and nothing else
  readonly known: readonly string[] // names of ingredients
  readonly stages: readonly string[] // names of stages
  readonly different: number
  readonly values: readonly (number | undefined)[] // of its numbers, row by row
}

const unitCell = /^(?:g|gr|grams?|gramm|grammes?|kg|oz|lbs?|%|ml|l|tsp|tbsp|cups?|tl|el|each|stück|pcs?)\.?$/i
const cellIn = ({ cells }: ForeignRow, at: number): string => (cells[at] ?? '').trim()

function looksOf(rows: readonly ForeignRow[], at: number, names: Names): Looks {
  const values: (number | undefined)[] = []
  const texts = new Set<string>()
  const [known, stages]: [string[], string[]] = [[], []]
  const looks = { at, filled: 0, numbers: 0, bare: 0, percents: 0, units: 0 }
  for (const row of rows) {
    const cell = cellIn(row, at)
    const read = cell === '' || isName(cell) ? undefined : readCell(cell, 'amount', '.')
    values.push(read?.is === 'quantity' ? (read.grams ?? (read.percent ?? 0) * 100) : undefined)
    if (cell === '') continue
    looks.filled++
    texts.add(cell)
    if (read?.is === 'quantity' || read?.is === 'nothing') {
      looks.numbers++
      if (read.is === 'quantity' && read.bare) looks.bare++
      if (read.is === 'quantity' && read.percent !== undefined) looks.percents++
    } else if (unitCell.test(cell)) looks.units++
    else if (isStageName(cell)) stages.push(cell)
    else if (names.kind(cell) !== undefined || names.find(cell)) known.push(cell)
  }
  return { ...looks, known, stages, different: texts.size, values }
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

/** How many times as much as in one column there is in another, wherever both say something; undefined: it varies. */
function timesOf(first: Looks, { values }: Looks): number | undefined {
  const pairs = values.flatMap((b, row) => (b && first.values[row] ? [[first.values[row], b] as const] : []))
  const [sumA, sumB] = [pairs.reduce((sum, [a]) => sum + a, 0), pairs.reduce((sum, [, b]) => sum + b, 0)]
  const times = sumB / sumA
  const isOne = Math.abs(times - 1) < 0.01
  return pairs.length > 2 && !isOne && pairs.every(([a, b]) => Math.abs(a * times - b) <= 0.02 * b + 0.5)
    ? times
    : undefined
}

/** Are these cells and those after them the halves of numbers that a comma took apart? */
export function isBrokenNumber(body: readonly ForeignRow[], at: number): boolean {
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

/** Where tables of one shape stand side by side, the columns of their names: known ingredients, and numbers behind them. */
export function besideIn(
  headings: readonly string[],
  body: readonly ForeignRow[],
  width: number,
  names: Names,
): readonly number[] {
  const looks = Array.from({ length: width }, (_, at) => looksOf(body, at, names))
  const starts = looks.flatMap(({ at, filled, known, stages }) =>
    known.length > 0 && (known.length + stages.length) * 2 > filled ? [at] : [],
  )
  const size = (starts[1] ?? 0) - (starts[0] ?? 0)
  const isAgain = (start: number, nth: number) =>
    start === starts[0]! + nth * size &&
    looks.slice(start + 1, start + size).some(isOfNumbers) &&
    looks
      .slice(start, start + size)
      .every((_, i) => headingUse(headings[start + i] ?? '') === headingUse(headings[starts[0]! + i] ?? ''))
  return starts.length > 1 && starts.every(isAgain) ? starts : []
}

interface Candidate {
  readonly column: number
  readonly score: number
  readonly use: ColumnUse
  readonly reason: Reason
  readonly ask: boolean
  readonly unless: readonly (ColumnUse | undefined)[] // uses that another column may have taken before
}

const amountUses = columnUses.filter(isAmountUse)
const weightUses = amountUses.filter(use => use !== 'percent')
const severalTimes: readonly ColumnUse[] = ['leave out', 'note', 'of a stage']

/** Weighs what each column can be read as, by its heading and by what it holds; of all the likeliest that go together. */
export class ColumnGuesser {
  readonly uses: readonly ColumnUse[]
  readonly guesses: readonly Guess[]
  readonly #candidates: Candidate[] = []
  readonly #looks: readonly Looks[]
  readonly #headed: readonly ReturnType<typeof headingUse>[]

  constructor(
    readonly headings: readonly string[],
    readonly body: readonly ForeignRow[],
    width: number,
    delimiter: string,
    readonly names: Names,
  ) {
    this.#looks = Array.from({ length: width }, (_, at) => looksOf(body, at, names))
    this.#headed = this.#looks.map(({ at }) => headingUse(headings[at] ?? ''))
    const ofStages = stageColumnsIn(headings, this.#looks)
    for (const at of ofStages) this.#offer(at, 900, 'of a stage', { code: 'ofOneStage' })
    this.#byHeadings(ofStages.length > 0)
    this.#names()
    const ingredient = this.#likeliest().findIndex(candidate => candidate?.use === 'ingredient')
    for (const looks of this.#looks)
      if (this.#headed[looks.at] === undefined && isOfWords(looks)) this.#words(looks, ingredient)
      else if (this.#headed[looks.at] === undefined && isOfNumbers(looks))
        this.#numbers(looks, ingredient, ofStages.length > 0)
    if (ofStages.length === 0) {
      this.#wholeDough()
      this.#batches()
    }
    if (delimiter === ',') this.#brokenNumbers()
    const chosen = this.#likeliest()
    this.uses = chosen.map(candidate => candidate?.use ?? 'leave out')
    this.guesses = chosen.flatMap(candidate =>
      candidate
        ? [{ about: 'column', column: candidate.column, ask: candidate.ask, reason: candidate.reason }]
        : [],
    )
  }

  #offer(
    column: number,
    score: number,
    use: ColumnUse,
    reason: { readonly code: ColumnReason } & Readonly<Record<string, unknown>>,
    { ask = false, unless = [] as readonly ColumnUse[] } = {},
  ): void {
    const once = severalTimes.includes(use) ? [] : [use]
    const blocked = [...unless, ...once, ...(isAmountUse(use) ? (['of a stage'] as const) : [])]
    const named = { heading: this.headings[column] ?? '', at: column }
    this.#candidates.push({
      column,
      score,
      use,
      ask,
      unless: blocked,
      reason: { column: named, ...reason } as unknown as Reason,
    })
  }

  /** Of each column the likeliest candidate that no likelier one of another column stands against. */
  #likeliest(): (Candidate | undefined)[] {
    const chosen: (Candidate | undefined)[] = this.#looks.map(() => undefined)
    const taken = new Set<ColumnUse | undefined>()
    const sorted = this.#candidates.toSorted((a, b) => b.score - a.score || a.column - b.column)
    for (const candidate of sorted) {
      if (chosen[candidate.column] || candidate.unless.some(use => taken.has(use))) continue
      chosen[candidate.column] = candidate
      taken.add(candidate.use)
    }
    return chosen
  }

  #byHeadings(hasStages: boolean): void {
    this.#headed.forEach((use, at) => {
      const { filled } = this.#looks[at]!
      if (use === undefined) return
      if (use === 'other percent') {
        this.#offer(at, 3, 'leave out', { code: 'ofWholeDough' }, { ask: true })
      } else if (use === 'leave out') this.#offer(at, 800, use, { code: 'headingLeftOut' })
      else {
        const ask = isAmountUse(use) && filled > 0 && !isOfNumbers(this.#looks[at]!)
        this.#offer(at, 800, use, { code: 'headingSays', use }, { ask })
        if (hasStages && isAmountUse(use)) this.#offer(at, 790, 'leave out', { code: 'ofNoStage' })
        this.#offer(at, 780, 'leave out', { code: 'headingTaken', use }, { ask: true })
      }
    })
  }

  /** The column of names, where no heading tells: the one with the most ingredients in it. */
  #names(): void {
    if (this.#headed.includes('ingredient')) return
    const texts = this.#looks.filter(
      looks => this.#headed[looks.at] === undefined && isOfWords(looks) && looks.units * 2 < looks.filled,
    )
    for (const { at, known, different } of texts) {
      const [example] = known
      const reason =
        example === undefined ? { code: 'names' as const } : { code: 'knownNames' as const, example }
      this.#offer(at, 100 + known.length + different / 1000, 'ingredient', reason, {
        ask: known.length === 0,
      })
    }
    // a heading that may mean the bread may mean what goes into it
    const named = this.#headed.indexOf('formula')
    if (texts.length === 0 && named >= 0)
      this.#offer(named, 850, 'ingredient', { code: 'onlyNames' }, { ask: true })
  }

  /** Other columns of words: units, stages, the names of formulas, notes. */
  #words({ at, filled, units, stages, different }: Looks, ingredient: number): void {
    const hasHeadings = this.headings.length > 0
    const isBefore = at < ingredient
    const isRepeated = different * 2 <= filled || filled * 3 <= (this.#looks[ingredient]?.filled ?? 0)
    if (units * 2 > filled) this.#offer(at, 60, 'unit', { code: 'units' })
    if (stages.length * 2 > filled || (isBefore && stages.length > 0))
      this.#offer(at, 55, 'stage', { code: 'stageNames', example: stages[0] })
    if (isBefore && isRepeated && !hasHeadings)
      this.#offer(at, 40, 'formula', { code: 'repeatedNames' }, { ask: true })
    if (at > ingredient) this.#offer(at, 30, 'note', { code: 'notes' }, { ask: hasHeadings })
    this.#offer(at, 1, 'leave out', { code: 'unknownWords' }, { ask: true })
  }

  #numbers(looks: Looks, ingredient: number, hasStages: boolean): void {
    const { at, numbers, bare, percents } = looks
    const heading = this.headings[at] ?? ''
    const labels = this.body.map(row => cellIn(row, ingredient))
    if (hasStages) this.#offer(at, 95, 'leave out', { code: 'ofNoStage' })
    if (isStageName(heading) || (isTotalWord(heading) && this.headings.some(isStageName)))
      this.#offer(at, 92, 'leave out', { code: 'oneStageOnly' }, { ask: true })
    if (percents * 2 > numbers) this.#offer(at, 90, 'percent', { code: 'perCentSigns' })
    if (at === 0 && countsRows(looks)) this.#offer(at, 85, 'leave out', { code: 'rowNumbers' })
    if (bare < numbers) this.#offer(at, 80, 'amount', { code: 'amountsWithUnits' })
    if (addsToHundred(looks, labels, this.names))
      this.#offer(at, 70, 'percent', { code: 'floursOfHundred' }, { ask: true })
    this.#offer(at, 60, 'grams', { code: 'plainNumbers' }, { ask: true, unless: weightUses })
    this.#offer(at, 1, 'leave out', { code: 'moreNumbers' }, { ask: true })
  }

  /** Where nothing else is an amount: better a percentage of the whole dough, asked about, than none at all. */
  #wholeDough(): void {
    const at = this.#headed.indexOf('other percent')
    if (at >= 0 && !this.#likeliest().some(candidate => amountUses.includes(candidate?.use as never)))
      this.#offer(at, 4, 'percent', { code: 'ofWholeDough' }, { ask: true })
  }

  /** Columns with the same amounts for batches of another size: which is meant only the baker knows. */
  #batches(): void {
    const chosen = this.#likeliest()
    const first = chosen.find(candidate => candidate && weightUses.some(use => use === candidate.use))
    if (!first) return
    const others = chosen.flatMap(candidate => {
      const code = candidate?.reason.code
      if (!candidate || (code !== 'headingTaken' && code !== 'moreNumbers')) return []
      const times = timesOf(this.#looks[first.column]!, this.#looks[candidate.column]!)
      return times === undefined ? [] : [{ ...candidate, times }]
    })
    const named = { heading: this.headings[first.column] ?? '', at: first.column }
    for (const { column, score, times } of others)
      this.#offer(
        column,
        score + 0.5,
        'leave out',
        { code: 'anotherBatch', times: Number(times.toPrecision(4)), first: named },
        { ask: true },
      )
    if (others.length > 0) {
      const reason = { code: 'oneOfSeveralBatches' as const }
      this.#offer(first.column, first.score + 0.5, first.use, reason, { ask: true })
    }
  }

  /** `69,5` and `1,000 g` between commas have become two cells. Such columns are not read before somebody has looked. */
  #brokenNumbers(): void {
    const out = new Set(
      this.#likeliest().flatMap((candidate, at) => (candidate && candidate.use !== 'leave out' ? [] : [at])),
    )
    for (const { at } of this.#looks.slice(0, -1)) {
      if (isAmountUse(this.#headed[at + 1] as ColumnUse) || out.has(at) || !isBrokenNumber(this.body, at))
        continue
      for (const column of [at, at + 1]) {
        out.add(column)
        this.#offer(column, 1000, 'leave out', { code: 'brokenNumber' }, { ask: true })
      }
    }
  }
}
