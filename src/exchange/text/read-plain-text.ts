import type { Batch } from '../../dough/document/batch.js'
import {
  type Formula,
  finalDoughOf,
  type Hold,
  type Jotting,
  type KeptSetting,
  type Line,
  type Meaning,
  nameKey,
  newId,
  type Problem,
  type Stage,
  type Step,
  usualFlourWeight,
} from '../../dough/document/formula.js'
import type { FormulasRead } from '../csv/row-reader.js'
import { readMake } from '../values/batch-text.js'
import { readCountsAs } from '../values/counts-as.js'
import { distinct } from '../values/distinct.js'
import { heldBy, inProportion, readHoldValue } from '../values/hold-text.js'
import { readGrams, readPercent } from '../values/written-weights.js'
import {
  batchesHeading,
  cautionsHeading,
  cellsIn,
  householdHeading,
  stageLine,
  titleLine,
  uncell,
} from './plain-cells.js'
import { headings, stepHeadings } from './plain-text.js'
import { type TextDiagnostic, textProblem } from './words.js'

const mostCharacters = 1e6
const mostLines = 20_000

type Open<T> = { -readonly [K in keyof T]: T[K] }

interface StageRead extends Omit<Open<Stage>, 'lines' | 'method'> {
  readonly lines: Open<Line>[]
  readonly steps: Step[]
  readonly bases: string[]
  columns: readonly string[] | undefined // the headings over its lines, once they have come
  inMethod: boolean // what follows are its steps
}

interface HoldRead {
  readonly row: number
  readonly reading: Hold['reading']
  readonly value: number
  readonly ingredient: string | undefined // undefined: every line gives
}

/** One formula while its text is being read. */
class FormulaRead {
  note = ''
  flourWeight = usualFlourWeight
  make: Batch | undefined
  loss: number | undefined
  bakeLoss: number | undefined
  readonly stages: StageRead[] = []
  readonly holds: HoldRead[] = []
  readonly meanings: Meaning[] = []
  readonly jottings: Jotting[] = []
  readonly kept: KeptSetting[] = []
  readonly id = newId()

  constructor(
    readonly name: string,
    readonly row: number,
  ) {}

  /** A setting of the stage being read; false where it is not understood. */
  stageSetting(stage: StageRead, key: string, value: string): boolean {
    if (key === 'weighs') return true
    if (key === 'base') {
      stage.bases.push(uncell(value))
      return true
    }
    if (key === 'ferments') {
      if (value !== 'yes' && value !== 'no') return false
      stage.ferments = value === 'yes'
      return true
    }
    const amount =
      key === 'loss' ? readPercent(value) : value === 'seed' ? ('seed' as const) : readGrams(value)
    if (amount === undefined) return false
    if (key === 'keep-back') stage.keepBack = amount
    else if (key === 'loss' && amount !== 'seed' && amount < 1) stage.loss = amount
    else return false
    return true
  }

  /** A setting of the formula; false where it is not understood. */
  setting(row: number, key: string, value: string): boolean {
    const cells = cellsIn(value)
    const [first = '', second, third] = cells
    if (key === 'note') this.note = uncell(value)
    else if (key === 'flour weight') {
      const grams = readGrams(value)
      if (!grams || grams === Infinity) return false
      this.flourWeight = grams
    } else if (key === 'make') {
      // The name is a cell of its own, whatever is in it.
      const made = readMake(second === undefined ? value : `${first} x`)
      if (!made) return false
      this.make =
        made.make === 'all of' && second !== undefined ? { ...made, ingredient: uncell(second) } : made
    } else if (key === 'loss' || key === 'bake loss') {
      const loss = readPercent(value)
      if (loss === undefined || !(loss < 1)) return false
      if (key === 'loss') this.loss = loss
      else this.bakeLoss = loss
    } else if (key.startsWith('counts as ')) {
      const countsAs = readCountsAs(key.slice('counts as '.length))
      if (!countsAs) return false
      this.meanings.push({ ingredient: uncell(value), countsAs })
    } else if (key === 'jotting' && second === 'is' && third !== undefined)
      this.jottings.push({ id: newId(), name: uncell(first), text: uncell(third) })
    else if (key === 'kept setting' && cells.length >= 4) {
      const [stage = '', setting = '', amount = '', note = '', ingredient] = cells.map(uncell)
      this.kept.push({ stage, setting, amount, note, ...(ingredient === undefined ? {} : { ingredient }) })
    } else {
      const reading = heldBy(key)
      const held = reading && readHoldValue(reading, first)
      if (!reading || held === undefined || second === undefined) return false
      const isWhole = reading === 'doughWeight' && second === inProportion && third === undefined
      if (!isWhole && third !== 'gives') return false
      this.holds.push({ row, reading, value: held, ingredient: isWhole ? undefined : uncell(second) })
    }
    return true
  }

  /** A line of the stage by the headings above it; false where it has no such cells. */
  line(stage: StageRead, row: string): boolean {
    const cells = cellsIn(row)
    const at = (heading: string) => cells[stage.columns!.indexOf(heading)]
    const [ingredient, typed] = [at(headings.ingredient), at(headings.typed)]
    if (ingredient === undefined || typed === undefined || cells.length > stage.columns!.length) return false
    const note = at(headings.note) ?? ''
    stage.lines.push({
      id: newId(),
      ingredient: uncell(ingredient),
      amount: uncell(typed),
      note: uncell(note),
    })
    return true
  }

  /** A step of the stage's method; false where it is none. */
  step({ steps }: StageRead, row: string): boolean {
    const [does, kind, text, note = ''] = cellsIn(row)
    if (does === undefined || text === undefined || cellsIn(row).length > stepHeadings.length) return false
    if (kind !== 'hands' && kind !== 'wait' && kind !== 'bake') return false
    steps.push({ id: newId(), does: uncell(does), kind, text: uncell(text), note: uncell(note) })
    return true
  }

  finish(say: (row: number, diagnostic: TextDiagnostic) => void): Formula {
    if (this.stages.length === 0) this.stages.push(newStage('Final dough'))
    const named = (lines: readonly Line[]) => {
      const names = distinct(lines.map(l => l.ingredient)).map(nameKey)
      const byName = new Map(names.map((key, at) => [key, lines[at]!]))
      return (name: string) => byName.get(nameKey(name))
    }
    const stages = this.stages.map(
      ({ bases, columns: _columns, inMethod: _inMethod, steps, ...stage }): Stage => {
        const lineCalled = named(stage.lines)
        const marked = new Set(bases.map(lineCalled))
        if (marked.has(undefined)) say(this.row, { code: 'textBaseNotFound', stage: stage.name })
        const lines = stage.lines.map(l => (marked.has(l) ? { ...l, base: true as const } : l))
        return { ...stage, lines, ...(steps.length && { method: steps }) }
      },
    )
    const formula: Formula = {
      id: this.id,
      name: this.name,
      note: this.note,
      flourWeight: this.flourWeight,
      stages,
      meanings: this.meanings,
      keptSettings: this.kept,
    }
    const lineCalled = named(finalDoughOf(formula).lines)
    const holds = this.holds.flatMap(({ row, reading, value, ingredient }): Hold[] => {
      if (ingredient === undefined) return [{ reading, value, line: '' }]
      const line = lineCalled(ingredient)
      if (!line) say(row, { code: 'textGiverNotFound', row, ingredient })
      return line ? [{ reading, value, line: line.id }] : []
    })
    const losses = {
      ...(this.loss === undefined ? {} : { loss: this.loss }),
      ...(this.bakeLoss === undefined ? {} : { bakeLoss: this.bakeLoss }),
    }
    const batch: Batch | undefined =
      this.make || Object.keys(losses).length
        ? { ...(this.make ?? { make: 'as written' }), ...losses }
        : undefined
    return {
      ...formula,
      ...(holds.length && { holds }),
      ...(batch && { batch }),
      ...(this.jottings.length && { jottings: this.jottings }),
    }
  }
}

const newStage = (name: string): StageRead => ({
  id: newId(),
  name,
  lines: [],
  steps: [],
  bases: [],
  columns: undefined,
  inMethod: false,
})

const isUnderline = (line: string | undefined, sign: string): boolean =>
  line !== undefined && line.length >= 3 && line === sign.repeat(line.length)

/** Whether a line belongs to what stands over it. */
const isBehind = (line: string): boolean => /^>(?: |$)/.test(line)

const isStepHead = (line: string): boolean => {
  const cells = cellsIn(line)
  return cells.length === stepHeadings.length && cells.every((cell, at) => cell === stepHeadings[at])
}

/** A line of a text, with the row it is told by. */
export interface TextLine {
  readonly row: number
  readonly text: string
}

const linesOf = (text: string): TextLine[] =>
  text
    .replace(/^\ufeff/, '')
    .split(/\r\n?|\n/)
    .map((line, at) => ({ row: at + 1, text: line.trimEnd() }))

/** Whether a text is one that `writePlainText` wrote, and not some other recipe. */
export const isPlainText = (text: string): boolean =>
  /(?:^|\n)═{3,} *\r?\n/.test(text) && /(?:^|\n)─{3,} *\r?\n/.test(text)

/**
 * The formulas of a text that `writePlainText` wrote: the same as were written, but for ids and kept states. What was
 * typed is read, the figures beside it are not. `row` of a problem is a line of the text. Never throws.
 */
export function readPlainText(text: string): FormulasRead {
  return readPlainLines(text.length > mostCharacters ? undefined : linesOf(text))
}

/** The same of lines that are parted already; undefined where they are too many. */
export function readPlainLines(found: readonly TextLine[] | undefined): FormulasRead {
  const problems: Problem[] = []
  const say = (row: number, diagnostic: TextDiagnostic) =>
    void problems.push({ ...textProblem(diagnostic), where: { row }, severity: 'error' })
  if (!found || found.length > mostLines) {
    say(1, { code: 'textTooLong' })
    return { formulas: [], problems }
  }
  const lines = found.map(({ text }) => text)
  const read: FormulaRead[] = []
  let formula: FormulaRead | undefined
  let stage: StageRead | undefined // until a blank line ends it
  let isBlock: 'note' | 'other' | undefined // lines behind `> ` belong to this
  for (let at = 0; at < lines.length; at++) {
    const line = lines[at]!
    const { row } = found[at]!
    if (line === '') {
      stage = undefined
      isBlock = undefined
    } else if (isUnderline(lines[at + 1], titleLine)) {
      formula = new FormulaRead(uncell(line), row)
      read.push(formula)
      stage = undefined
      at++
    } else if (!formula) {
      if (line === `${batchesHeading}:`) isBlock = 'other'
      else if (!(isBlock && isBehind(line))) say(row, { code: 'textBeforeTitle', row, text: line })
    } else if (isUnderline(lines[at + 1], stageLine)) {
      stage = newStage(uncell(line))
      formula.stages.push(stage)
      at++
    } else if (isBehind(line) && isBlock) {
      if (isBlock === 'note')
        formula.note += `${formula.note === '' && lines[at - 1] === 'Note:' ? '' : '\n'}${line.slice(2)}`
    } else if (stage?.columns && isStepHead(line)) stage.inMethod = true
    else if (stage?.inMethod) {
      if (!formula.step(stage, line)) say(row, { code: 'textNoStep', row, text: line })
    } else if (stage?.columns) {
      if (!formula.line(stage, line)) say(row, { code: 'textNoLine', row, text: line })
    } else if (stage && cellsIn(line)[0] === headings.ingredient && !line.includes(':'))
      stage.columns = cellsIn(line)
    else {
      const [, key = '', value = ''] = /^([^:]+):(?: (.*))?$/s.exec(line) ?? []
      const name = nameKey(key)
      const isOther = name === 'readings' || key === cautionsHeading || key.startsWith(householdHeading)
      isBlock = value !== '' ? undefined : name === 'note' ? 'note' : isOther ? 'other' : undefined
      const isRead =
        isBlock !== undefined ||
        (stage ? formula.stageSetting(stage, name, value) : formula.setting(row, name, value))
      if (!isRead) say(row, { code: 'textNotUnderstood', row, text: line })
    }
  }
  if (!formula && problems.length === 0) say(1, { code: 'textWithoutFormula' })
  return { formulas: read.map(one => one.finish(say)), problems }
}
