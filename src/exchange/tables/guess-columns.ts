import type { Larder } from '../../dough/document/larder.js'
import { quoted } from '../csv/row.js'
import { isAmountUse, isName, readCell } from './cell-quantity.js'
import { stageColumnsIn } from './stage-columns.js'
import { kindOf } from './table-draft.js'
import type { ColumnUse, ForeignRow, Guess } from './types.js'
import { headingUse, isStageName, isTotalWord, totalOf } from './words.js'

/** What the cells of a column look like. */
interface Looks {
  readonly at: number
  readonly filled: number
  readonly numbers: number // with or without a unit
  readonly bare: number // of those, without any
  readonly percents: number // of those, with a sign of per cent
  readonly units: number // cells that are a unit and nothing else
  readonly known: number // names of ingredients
  readonly stages: number // names of stages
  readonly different: number
  readonly length: number // characters of a text on average
  readonly counts: boolean // 1, 2, 3 …
  readonly values: readonly (number | undefined)[] // of its numbers, row by row
}

const unitCell = /^(?:g|gr|grams?|gramm|grammes?|kg|oz|lbs?|%|ml|l|tsp|tbsp|cups?|tl|el|each|stück|pcs?)\.?$/i

function looksOf(rows: readonly ForeignRow[], at: number, larder: Larder): Looks {
  const values: (number | undefined)[] = []
  const texts = new Set<string>()
  const looks = { at, filled: 0, numbers: 0, bare: 0, percents: 0, units: 0, known: 0, stages: 0, length: 0 }
  for (const { cells } of rows) {
    const cell = (cells[at] ?? '').trim()
    const read = cell === '' || isName(cell) ? undefined : readCell(cell, 'amount', '.')
    values.push(read?.is === 'quantity' ? (read.grams ?? (read.percent ?? 0) * 100) : undefined)
    if (cell === '') continue
    looks.filled++
    texts.add(cell)
    if (read?.is === 'quantity' || read?.is === 'nothing') {
      looks.numbers++
      if (read.is === 'quantity' && read.bare) looks.bare++
      if (read.is === 'quantity' && read.percent !== undefined) looks.percents++
      continue
    }
    looks.length += cell.length
    if (unitCell.test(cell)) looks.units++
    else if (isStageName(cell)) looks.stages++
    else if (kindOf(cell, larder) !== undefined || larder.find(cell)) looks.known++
  }
  const words = looks.filled - looks.numbers
  const counted = values.filter(value => value !== undefined)
  const counts =
    counted.length > 2 &&
    looks.bare === looks.filled &&
    counted.every((value, i) => value === counted[0]! + i)
  return { ...looks, length: words ? looks.length / words : 0, different: texts.size, counts, values }
}

/** Do the flours of this column add to 100? */
function addsToHundred(looks: Looks, names: readonly string[], larder: Larder): boolean {
  let sum = 0
  let flours = 0
  names.forEach((name, row) => {
    const value = looks.values[row]
    if (value === undefined || kindOf(name, larder) !== 'flour' || totalOf(name) !== undefined) return
    sum += value
    flours++
  })
  return flours > 0 && [1, 2, 3, 4].some(times => Math.abs(sum - 100 * times) < 0.5)
}

export class ColumnGuesser {
  readonly uses: ColumnUse[]
  readonly guesses: Guess[] = []
  readonly #looks: readonly Looks[]

  constructor(
    readonly headings: readonly string[],
    readonly body: readonly ForeignRow[],
    readonly width: number,
    readonly delimiter: string,
    readonly larder: Larder,
  ) {
    this.uses = Array.from({ length: width }, () => 'leave out')
    this.#looks = this.uses.map((_, at) => looksOf(body, at, larder))
    this.#byHeadings()
    this.#ingredient()
    this.#texts()
    this.#amounts()
    if (delimiter === ',') this.#brokenNumbers()
    this.guesses.sort((a, b) => (a.column ?? 0) - (b.column ?? 0))
  }

  #use(column: number, use: ColumnUse, why: string, ask = false): void {
    this.uses[column] = use
    this.guesses.push({ about: 'column', column, ask, why })
  }

  #isGuessed(column: number): boolean {
    return this.guesses.some(guess => guess.column === column)
  }

  #byHeadings(): void {
    const taken = new Set<ColumnUse>()
    const once: readonly ColumnUse[] = [
      'ingredient',
      'stage',
      'formula',
      'unit',
      'grams',
      'kilograms',
      'ounces',
      'pounds',
      'percent',
      'amount',
    ]
    const isOfNumbers = (at: number) => {
      const { numbers, filled } = this.#looks[at]!
      return filled > 0 && numbers * 2 >= filled
    }
    const ofStages = stageColumnsIn(this.headings, isOfNumbers)
    for (const column of ofStages)
      this.#use(column, 'of a stage', `${quoted(this.headings[column]!.trim())} is the amounts of one stage.`)
    this.headings.forEach((heading, column) => {
      const use = headingUse(heading)
      const named = quoted(heading.trim())
      if (use === undefined || ofStages.includes(column)) return
      if (ofStages.length > 0 && isAmountUse(use as ColumnUse))
        this.#use(
          column,
          'leave out',
          `${named} is not of one stage, and each stage has a column of its own.`,
        )
      else if (use === 'other percent')
        this.#use(
          column,
          'leave out',
          `${named} looks like a percentage of the whole dough, which is worked out anew and not read.`,
          true,
        )
      else if (use !== 'leave out' && once.includes(use) && taken.has(use))
        this.#use(
          column,
          'leave out',
          `${named} looks like ${use} too, and an earlier column was taken for that.`,
          true,
        )
      else {
        taken.add(use)
        const ask = isAmountUse(use) && this.#looks[column]!.numbers * 2 < this.#looks[column]!.filled
        this.#use(
          column,
          use,
          use === 'leave out' ? `${named} is nothing that a formula keeps.` : `${named} is read as ${use}.`,
          ask,
        )
      }
    })
  }

  /** The column of names, where no heading tells: the one with the most ingredients in it. */
  #ingredient(): void {
    if (this.uses.includes('ingredient')) return
    const texts = this.#looks.filter(
      ({ at, filled, numbers, units }) =>
        !this.#isGuessed(at) && filled > 0 && numbers * 2 < filled && units * 2 < filled,
    )
    const score = (l: Looks) => l.known * 1000 + l.different
    const best = texts.reduce<Looks | undefined>((a, b) => (a && score(a) >= score(b) ? a : b), undefined)
    if (!best) {
      // a heading that may mean the bread may mean what goes into it
      const named = this.uses.indexOf('formula')
      if (named < 0) return
      this.guesses.splice(
        this.guesses.findIndex(guess => guess.column === named),
        1,
      )
      this.#use(
        named,
        'ingredient',
        `${quoted(this.headings[named] ?? '')} is the only column of names, so it was taken for the ingredients.`,
        true,
      )
      return
    }
    const why =
      best.known > 0 ? `holds names of ingredients, such as ${quoted(this.#example(best.at))}` : 'holds names'
    this.#use(best.at, 'ingredient', `Column ${best.at + 1} ${why}.`, best.known === 0)
  }

  #example(column: number): string {
    const cells = this.body.map(({ cells }) => (cells[column] ?? '').trim())
    return cells.find(cell => kindOf(cell, this.larder) !== undefined || this.larder.find(cell)) ?? ''
  }

  /** Other columns of words: units, stages, the names of formulas, notes. */
  #texts(): void {
    const ingredient = this.uses.indexOf('ingredient')
    for (const { at, filled, numbers, units, stages, different } of this.#looks) {
      if (this.#isGuessed(at) || filled === 0 || numbers * 2 >= filled) continue
      const repeats = different * 2 <= filled || filled * 3 <= (this.#looks[ingredient]?.filled ?? 0)
      if (units * 2 > filled) this.#use(at, 'unit', `Column ${at + 1} holds units of weight.`)
      else if (!this.uses.includes('stage') && (stages * 2 > filled || (at < ingredient && stages > 0)))
        this.#use(
          at,
          'stage',
          `Column ${at + 1} names stages, such as ${quoted(this.body.map(({ cells }) => (cells[at] ?? '').trim()).find(cell => isStageName(cell)) ?? '')}.`,
        )
      else if (at < ingredient && repeats && !this.uses.includes('formula') && this.headings.length === 0)
        this.#use(
          at,
          'formula',
          `Column ${at + 1} says the same of several rows: taken as the name of the bread.`,
          true,
        )
      else if (at > ingredient)
        this.#use(at, 'note', `Column ${at + 1} holds words: taken as notes.`, this.headings.length > 0)
      else this.#use(at, 'leave out', `It is not known what column ${at + 1} holds; it is not read.`, true)
    }
  }

  #amounts(): void {
    const ingredient = this.uses.indexOf('ingredient')
    const names = this.body.map(({ cells }) => (cells[ingredient] ?? '').trim())
    const hasStages = this.uses.includes('of a stage')
    for (const looks of this.#looks) {
      const { at, filled, numbers, bare, percents, counts } = looks
      if (this.#isGuessed(at) || filled === 0 || numbers * 2 < filled) continue
      const heading = (this.headings[at] ?? '').trim()
      const column = heading ? quoted(heading) : `Column ${at + 1}`
      if (hasStages) {
        this.#use(at, 'leave out', `${column} is not of one stage, and each stage has a column of its own.`)
        continue
      }
      if (isStageName(heading) || (isTotalWord(heading) && this.headings.some(isStageName))) {
        this.#use(
          at,
          'leave out',
          `${column} is a column of its own for one stage, or for all. Such a table is read stage by stage: say which column to read.`,
          true,
        )
        continue
      }
      const has = (use: ColumnUse) => this.uses.includes(use)
      if (percents * 2 > numbers && !has('percent'))
        this.#use(at, 'percent', `${column} holds numbers with a sign of per cent.`)
      else if (counts && at === 0) this.#use(at, 'leave out', `${column} counts the rows; it is not read.`)
      else if (bare < numbers && !has('amount'))
        this.#use(at, 'amount', `${column} holds amounts with their units.`)
      else if (addsToHundred(looks, names, this.larder) && !has('percent'))
        this.#use(
          at,
          'percent',
          `${column} holds plain numbers, and those of the flours add to 100: taken as percentages.`,
          true,
        )
      else if (!this.uses.some(use => isAmountUse(use) && use !== 'percent'))
        this.#use(
          at,
          'grams',
          `${column} holds plain numbers: taken as grams. Say so if they are something else.`,
          true,
        )
      else
        this.#use(
          at,
          'leave out',
          `${column} holds more numbers; it is not known of what, and they are not read.`,
          true,
        )
    }
    if (!hasStages && !this.uses.some(isAmountUse)) {
      // better a percentage of the whole dough, asked about, than nothing at all
      const percent = this.guesses.find(
        ({ column, why }) => column !== undefined && /percentage of the whole/.test(why),
      )
      if (percent?.column !== undefined) this.uses[percent.column] = 'percent'
    }
  }

  /** `69,5` and `1,000 g` between commas have become two cells. Such columns are not read before somebody has looked. */
  #brokenNumbers(): void {
    for (const { at } of this.#looks.slice(0, -1)) {
      const isSaid = isAmountUse(headingUse(this.headings[at + 1] ?? '') as ColumnUse | undefined)
      if (isSaid || this.uses[at] === 'leave out') continue
      if (!isBrokenNumber(this.body, at)) continue
      for (const column of [at, at + 1]) {
        this.guesses.splice(0, Infinity, ...this.guesses.filter(guess => guess.column !== column))
        this.#use(
          column,
          'leave out',
          `Columns ${at + 1} and ${at + 2} may be one number with a comma in it, so they are not read. Save the table with semicolons or tabs, or say what they are.`,
          true,
        )
      }
    }
  }
}

/** Are these cells and those after them the halves of numbers that a comma took apart? */
export function isBrokenNumber(body: readonly ForeignRow[], at: number): boolean {
  let both = 0
  for (const { cells } of body) {
    const [first, second] = [(cells[at] ?? '').trim(), (cells[at + 1] ?? '').trim()]
    if (second === '') continue
    if (!/^\d{1,4}$/.test(first) || !/^\d{1,3}\s*(?:%|\p{L}{1,3})?$/u.test(second)) return false
    both++
  }
  return both > 0
}
