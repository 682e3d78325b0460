import { grams, per100 } from '../../dough/document/words.js'
import { brokenRow } from '../csv/csv-table.js'
import { quoted } from '../csv/row.js'
import type { DecimalMark } from '../values/decimals.js'

const count = (n: number): string => n.toLocaleString('en-GB')
const signs: Readonly<Record<DecimalMark, string>> = { '.': 'point', ',': 'comma' }

const delimiters: Readonly<Record<string, string>> = {
  '\t': 'Tabs',
  ';': 'Semicolons',
  '|': 'Upright strokes',
  ',': 'Commas',
  '  ': 'Gaps of two and more blanks',
}

/** `3`, `3 and 4`, `3, 4, 5 and 12 more`. */
function rowNumbers(rows: readonly number[]): string {
  const shown = rows.length > 9 ? rows.slice(0, 8) : rows
  const rest = rows.length - shown.length
  const last = rest > 0 ? `${rest} more` : String(shown.at(-1))
  const first = rest > 0 ? shown : shown.slice(0, -1)
  return first.length === 0 ? last : `${first.join(', ')} and ${last}`
}
const rowOrRows = (rows: readonly number[]): string =>
  `${rows.length === 1 ? 'Row' : 'Rows'} ${rowNumbers(rows)}`
const verb = (rows: readonly number[], one: string, several: string): string =>
  `${rowOrRows(rows)} ${rows.length === 1 ? one : several}`

/** What a column is called: by its heading, or else by its number. */
const columnName = ({ heading, column }: ColumnFigures): string =>
  heading.trim() === '' ? `Column ${column + 1}` : quoted(heading.trim())

interface ColumnFigures {
  readonly heading: string // '' where it has none
  readonly column: number // 0-based
}

/** Why a table is taken apart and read as it is: for the guesses. */
const guesses = {
  'named delimiter': () => 'The first row names what separates the columns.',
  'no delimiter': () => 'Nothing separates columns: each row is one cell.',
  delimiter: ({ delimiter, lines, of }: { delimiter: string; lines: number; of: number }) =>
    `${delimiters[delimiter]} separate the columns: ${lines} of ${of === 300 ? 'the first 300' : of} rows hold them.`,
  'no headings': () => 'No row looks like headings; the columns were guessed from what they hold.',
  headings: ({ row }: { row: number }) => `Row ${row} holds the headings.`,
  title: ({ row, name }: { row: number; name: string }) => `Row ${row} names the bread: ${name}.`,

  'decimal sign': ({ sign, shown, few }: { sign: DecimalMark; shown: number; few: number }) =>
    `The decimal sign is the ${signs[sign]}, as ${shown === 1 ? 'one number shows' : `${shown} numbers show`}${few > 0 ? `, though ${few} have the other one` : ''}.`,
  'both decimal signs': () =>
    'As many numbers have a decimal point as have a decimal comma; each is read by itself.',
  'thousands or decimals': ({ sign, number }: { sign: DecimalMark; number: string }) =>
    `Nothing shows whether the ${signs[sign]} in ${number} is a decimal sign; it was taken to stand between thousands.`,
  'small decimals': ({ sign, number }: { sign: DecimalMark; number: string }) =>
    `Nothing shows what the ${signs[sign]} in ${number} is; in kilograms or pounds it was taken as the decimal sign.`,
  'no decimal sign': () => 'No number has a decimal sign.',

  'heading says': (c: ColumnFigures & { use: string }) => `${columnName(c)} is read as ${c.use}.`,
  'heading left out': (c: ColumnFigures) => `${columnName(c)} is nothing that a formula keeps.`,
  'heading taken': (c: ColumnFigures & { use: string }) =>
    `${columnName(c)} looks like ${c.use} too, and an earlier column was taken for that.`,
  'of one stage': (c: ColumnFigures) => `${columnName(c)} is the amounts of one stage.`,
  'of no stage': (c: ColumnFigures) =>
    `${columnName(c)} is not of one stage, and each stage has a column of its own.`,
  'of whole dough': (c: ColumnFigures) =>
    `${columnName(c)} looks like a percentage of the whole dough, which is worked out anew and not read.`,
  'one stage only': (c: ColumnFigures) =>
    `${columnName(c)} is a column of its own for one stage, or for all. Such a table is read stage by stage: say which column to read.`,
  'beside the first': (c: ColumnFigures) =>
    `${columnName(c)} holds names of ingredients again: taken as another table beside the first, read after it.`,
  'known names': (c: ColumnFigures & { example: string }) =>
    `${columnName(c)} holds names of ingredients, such as ${quoted(c.example)}.`,
  names: (c: ColumnFigures) => `${columnName(c)} holds names.`,
  'only names': (c: ColumnFigures) =>
    `${columnName(c)} is the only column of names, so it was taken for the ingredients.`,
  units: (c: ColumnFigures) => `${columnName(c)} holds units of weight.`,
  'stage names': (c: ColumnFigures & { example: string }) =>
    `${columnName(c)} names stages, such as ${quoted(c.example)}.`,
  'repeated names': (c: ColumnFigures) =>
    `${columnName(c)} says the same of several rows: taken as the name of the bread.`,
  notes: (c: ColumnFigures) => `${columnName(c)} holds words: taken as notes.`,
  'unknown words': (c: ColumnFigures) => `It is not known what ${columnName(c)} holds; it is not read.`,
  'per cent signs': (c: ColumnFigures) => `${columnName(c)} holds numbers with a sign of per cent.`,
  'row numbers': (c: ColumnFigures) => `${columnName(c)} counts the rows; it is not read.`,
  'amounts with units': (c: ColumnFigures) => `${columnName(c)} holds amounts with their units.`,
  'flours of hundred': (c: ColumnFigures) =>
    `${columnName(c)} holds plain numbers, and those of the flours add to 100: taken as percentages.`,
  'plain numbers': (c: ColumnFigures) =>
    `${columnName(c)} holds plain numbers: taken as grams. Say so if they are something else.`,
  'one of several batches': (c: ColumnFigures & { others: number }) =>
    `${columnName(c)} is one of ${c.others + 1} columns with the amounts of batches of different size; it is read. Choose another if that is meant.`,
  'another batch': (c: ColumnFigures & { times: number; of: string }) =>
    `${columnName(c)} holds ${String(Number(c.times.toPrecision(4)))} times what ${c.of} holds: the same for another size of batch; it is not read.`,
  'more numbers': (c: ColumnFigures) =>
    `${columnName(c)} holds more numbers; it is not known of what, and they are not read.`,
  'broken number': ({ first }: ColumnFigures & { first: number }) =>
    `Columns ${first + 1} and ${first + 2} may be one number with a comma in it, so they are not read. Save the table with semicolons or tabs, or say what they are.`,

  'stages in columns': () => 'Headings name stages: each such column was taken as the amounts of its stage.',
  'tables side by side': () => 'Tables stand side by side: each was taken as a stage or more of one dough.',
  'stages in a column': () => 'A column names the stage of each line.',
  'stages by headings': ({ names }: { names: readonly string[] }) =>
    `Rows of their own head the stages: ${names.slice(0, 4).join(', ')}${names.length > 4 ? ', …' : ''}.`,
  'stages by blanks': ({ blocks }: { blocks: number }) =>
    `Blank rows part the table into ${blocks} blocks; each was taken as a stage.`,
  'one dough': () => 'Nothing parts the table into stages: all lines are one dough.',
}

/** Why a table, or one of its rows, is not read. */
const errors = {
  'too many characters': ({ characters, most }: { characters: number; most: number }) =>
    `This table has ${count(characters)} characters; ${count(most)} are the most that is read at once. Bring it in by parts.`,
  'null bytes': () =>
    'This is not a text file: it holds null bytes. Save the table as CSV in UTF-8, and bring that in.',
  'too many rows': ({ rows, most }: { rows: number; most: number }) =>
    `This table has ${count(rows)} rows; ${count(most)} are the most that is read at once. Bring it in by parts.`,
  'too many columns': ({ columns, most }: { columns: number; most: number }) =>
    `This table has ${count(columns)} columns; ${count(most)} are the most that is read. Take the few that hold the formula, and bring those in.`,
  'long cell': ({ row, characters, most }: { row: number; characters: number; most: number }) =>
    `Row ${row} has a cell of ${count(characters)} characters; ${count(most)} are the most.`,
  'broken quotes': ({ row, isOpen }: { row: number; isOpen: boolean }) => brokenRow(row, isOpen).message,
  'too many cells': ({ row, cells, columns }: { row: number; cells: number; columns: number }) =>
    `Row ${row} has ${cells} cells where the table has ${columns} columns, so that it is not known which is which. A comma within a cell needs quotation marks around the cell.`,
  'too few cells': ({ row, cells, columns }: { row: number; cells: number; columns: number }) =>
    `Row ${row} has ${cells} cells where the table has ${columns} columns, and blanks do not show which is missing.`,
  'names nothing': ({ row, text }: { row: number; text: string }) =>
    `Row ${row} gives ${quoted(text)} and names no ingredient. Give it one, or empty the row.`,
  'nothing there': () => 'There is nothing to read: the table is empty.',
  'no table': () =>
    'Nothing separates names from amounts in this text, so it is no table. If it is a recipe in words, bring it in as that.',
  'columns not said': ({ ingredient, amount }: { ingredient: boolean; amount: boolean }) =>
    `Nothing can be read before it is said which column holds ${[...(ingredient ? [] : ['the ingredients']), ...(amount ? [] : ['their amounts'])].join(' and which ')}.`,
  'row of unsaid columns': () => 'It is not said which columns hold the ingredients and their amounts.',
  stopped: () => 'Reading was stopped.',
  'no line': () => 'No line was found in this table: no row has an ingredient and an amount.',
}

/** Why the text of a cell is no amount; within a sentence. */
export const noAmounts = {
  'too long': () => 'is too long to be an amount',
  'not edible': () => 'is a temperature or a time',
  negative: () => 'is below zero, or in brackets',
  calculation: () => 'is a calculation or an error of the program that wrote it',
  'unknown unit': ({ unit }: { unit: string }) => `has a unit, ${unit}, that is not known`,
  'by nothing': () => 'divides by nothing',
  'no number': () => 'is no number that can be read',
  'no amount': () => 'is no amount that can be read',
}

interface OfLine {
  readonly row: number
  readonly name: string
}

/** What the baker should look at. */
const warnings = {
  'stopped before the end': () => 'Reading was stopped before the end; nothing was added.',
  'unread amount': ({
    row,
    name,
    cell,
    why,
    isOnly,
  }: OfLine & { cell: string; why: NoAmount; isOnly: boolean }) =>
    `Row ${row} gives ${quoted(cell)} for ${name}, which ${sentence(noAmounts, why)}. ${isOnly ? 'The line is kept without an amount' : 'It was not read'}, and the text is in its note.`,
  'without an amount': ({ row, name }: OfLine) =>
    `Row ${row} gives no amount for ${name}. The line is kept without one.`,
  'counted eggs': ({ row, name, amount, pieces }: OfLine & { amount: string; pieces: number }) =>
    `Row ${row} gives ${amount} for ${name}. If they are counted, write ${pieces} each.`,
  'doubtful sign': ({ row, name, typed, read }: OfLine & { typed: string; read: string }) =>
    `Row ${row} has ${quoted(typed)} for ${name}, which is read as ${read}: the table does not show whether its ${signs[typed.includes(',') ? ',' : '.']} is a decimal sign. Choose the other one if that is not meant.`,
  'two weights': ({
    row,
    name,
    first,
    other,
    grams: [a, b],
  }: OfLine & { first: string; other: string; grams: readonly [number, number] }) =>
    `Row ${row} gives ${quoted(first)} and ${quoted(other)} for ${name}, which are ${grams(a)} and ${grams(b)}. The first is read.`,
  'another stage': ({ row, name }: OfLine) =>
    `Row ${row}, ${name}, follows a blank row without a heading: taken as the start of another stage.`,
  'headed again': ({ row, name }: OfLine) =>
    `Row ${row} heads ${quoted(name)} a second time: taken as more of the same stage.`,
  'another formula': ({ row, name, formula }: OfLine & { formula: string }) =>
    `Row ${row} heads ${quoted(name)} again after the final dough: taken as the start of another formula, ${quoted(formula)}.`,
  'formula without lines': ({ name }: { name: string }) =>
    `Nothing was found of ${name} that is a line, so it was left out.`,
  'named by its taker': ({ row, final, name }: OfLine & { final: string }) =>
    `The lines from row ${row} on have no heading; ${final} takes ${name}, so they were taken as ${name}.`,
  'stage without a name': ({ row, name }: OfLine) =>
    `The lines from row ${row} on have no heading and were called ${name}. Name them after the line that takes them.`,
  'not taken': ({ name, like }: { name: string; like: { row: number; ingredient: string } | undefined }) =>
    like
      ? `No line takes ${name}; row ${like.row}, ${quoted(like.ingredient)}, may be meant. If it is, give it the name of the stage.`
      : `No line takes ${name}. Add one of that name to the stage that does.`,
  'percentage off': ({
    row,
    name,
    percent,
    weight,
    base,
  }: OfLine & { percent: number; weight: number; base: number }) =>
    `Row ${row} gives ${per100(percent)} and ${grams(weight)} for ${name}, but ${per100(percent)} of ${grams(base)} is ${grams(percent * base)}. The weight is read.`,
  'percentages off': ({ rows, name, base }: { rows: readonly number[]; name: string; base: number }) =>
    `${rowOrRows(rows)} of ${name} have percentages that do not agree with their weights, if 100 % is ${grams(base)}. The weights are read.`,
  'of all flour': ({ name, final, all, own }: { name: string; final: string; all: number; own: number }) =>
    `The flours of all stages of ${name} add to ${per100(all)}, those of ${final} to ${per100(own)}: the percentages are of all the flour, and were read as weights for 1,000 g of it.`,
  'shares of one': ({ name }: { name: string }) =>
    `The percentages of ${name} are written as shares of 1: its flours add to 1. They were read as per cent, 1 being 100 %.`,
  'total differs': (total: TotalFigures) =>
    `${printed(total)}; its lines add to ${figure(total.unit, total.computed)}.`,
}

/** What was decided without a doubt, and is told all the same. */
const remarks = {
  'read as': ({ row, name, cell, amount }: OfLine & { cell: string; amount: string }) =>
    `Row ${row} gives ${quoted(cell)} for ${name}, read as ${amount}; the text is in its note.`,
  'without units': ({ rows }: { rows: readonly number[] }) =>
    `${verb(rows, 'gives', 'give')} a number without a unit: taken as grams.`,
  'part of the stage': ({ row, name, stage }: OfLine & { stage: string }) =>
    `Row ${row}, ${name}, follows a blank row without a heading: taken as part of ${stage}.`,
  'as above': ({ rows, column }: { rows: readonly number[]; column: string }) =>
    `${verb(rows, 'names', 'name')} no ${column}: taken as part of the ${column} above.`,
  'final dough last': ({ name }: { name: string }) =>
    `${name} stands before other stages in the table. The final dough comes last here, so it was put there.`,
  'percentages kept': ({
    name,
    final,
    flour,
    agree,
  }: {
    name: string
    final: string
    flour: number
    agree: boolean
  }) =>
    `${name} gives percentages and weights. The percentages of ${final} are read, of ${grams(flour)} of flour: they have the more digits${agree ? ', and agree with the weights' : ''}.`,
  'weights kept': ({ name, agree }: { name: string; agree: boolean }) =>
    `${name} gives percentages and weights. The weights are read${agree ? '; the percentages agree with them' : ''}.`,
  'shown anew of all flour': ({ name }: { name: string }) =>
    `The percentages of ${name} are of the whole flour in the file and are shown anew on each stage’s own flour, the weights unchanged.`,
  'shown anew': ({ name, share }: { name: string; share: number }) =>
    `The flour of ${name} is ${per100(share)} in the file; its percentages are shown anew on the stage’s own flour, the weights unchanged.`,
  'several shown anew': ({ stages }: { stages: number }) =>
    `The flours of ${stages} stages are not 100 % in the file; their percentages are shown anew on each stage’s own flour, the weights unchanged.`,
}

interface TotalFigures {
  readonly name: string
  readonly unit: 'grams' | 'percent'
  readonly printed: number
  readonly computed: number
}
const figure = (unit: 'grams' | 'percent', value: number): string =>
  unit === 'percent' ? per100(value) : grams(value)
const printed = ({ name, unit, printed: value }: Omit<TotalFigures, 'computed'>): string =>
  `The file says ${name} ${figure(unit, value)}`

/** Why a row without an amount was taken as it was. */
const rowReasons = {
  sentence: () => 'It reads like a remark.',
  'nothing below': () => 'It has no amount, and no lines stand below it.',
  'below a heading': () => 'It stands between a heading and the lines below it.',
  ingredient: () => 'It names an ingredient.',
  'among lines': () => 'It stands among lines.',
  'lines below': () => 'Lines stand below it.',
  'stage beside': () => 'Its stage is named beside it.',
  'stage taken': () => 'It takes a stage above.',
  'stage name': () => 'It is called as stages are.',
  colon: () => 'Lines stand below its colon.',
  'total beside': () => 'What the lines below it add to stands beside it.',
  'another name below': () => 'Another name stands below it.',
  'first of lines': () => 'It is the first name over the lines.',
}

/** What is said of a row or a total that is as it should be, or that is not compared. */
const facts = {
  'total without a figure': ({ row }: { row: number }) =>
    `Row ${row} names a total and gives no figure that can be read.`,
  'also in': ({ amount, stage }: { amount: string; stage: string }) =>
    `Also ${amount || 'without an amount'} in ${stage}.`,
  'total agrees': (total: TotalFigures) => `${printed(total)}, and its lines add to that.`,
  'total rounded': (total: TotalFigures) =>
    `${printed(total)}; its lines add to ${figure(total.unit, total.computed)}, which rounding explains.`,
  'total is no weight': ({ name, text }: { name: string; text: string }) =>
    `The file says ${name} ${text}; it was not compared, for it is no weight.`,
  'total of unknown figures': (total: Omit<TotalFigures, 'computed'> & { rows: readonly number[] }) =>
    `${printed(total)}; it was not compared, for ${verb(total.rows, 'has', 'have').toLowerCase()} no such figure.`,
  'total of many': (total: Omit<TotalFigures, 'computed'> & { most: number }) =>
    `${printed(total)}; it was not compared, for there are more than ${total.most} totals.`,
  'total of unknown': (total: Omit<TotalFigures, 'computed'> & { label: string }) =>
    `${printed(total)}; it was not compared, for it is not known what ${total.label} adds up.`,
}

const all = { ...guesses, ...errors, ...warnings, ...remarks, ...rowReasons, ...facts }

type Sentences = Readonly<Record<string, (figures: never) => string>>
/** A code of these with the figures that its sentence needs. */
type ReasonOf<S extends Sentences> = {
  [C in keyof S]: { readonly code: C } & (Parameters<S[C]> extends [infer Figures] ? Figures : unknown)
}[keyof S]

export type Reason = ReasonOf<typeof all>
export type RowReason = keyof typeof rowReasons
export type NoAmount = ReasonOf<typeof noAmounts>

const sentence = <S extends Sentences>(of: S, reason: ReasonOf<S>): string =>
  (of[reason.code as keyof S] as unknown as (figures: ReasonOf<S>) => string)(reason)

/** A reason in a sentence for the baker. */
export const inWords = (reason: Reason): string => sentence(all, reason)

/** How much a reason weighs where it is a problem. */
export const severityOf = ({ code }: Reason): 'error' | 'warning' | 'remark' =>
  code in errors ? 'error' : code in warnings ? 'warning' : 'remark'
