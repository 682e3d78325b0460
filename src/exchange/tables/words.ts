import { grams, per100 } from '../../dough/document/words.js'
import { type Sentences, wording } from '../../engine/index.js'
import { quoted } from '../csv/row.js'
import type { NoAmount } from '../values/amount-cells.js'
import { type ReasonOf, sentencesOf } from '../values/templates.js'

/** Why a table is taken apart and read as it is: for the guesses. */
const guesses = {
  namedDelimiter: 'The first row names what separates the columns.',
  noDelimiter: 'Nothing separates columns: each row is one cell.',
  delimiter: '{delimiter:delimiter} separate the columns: {lines} of {of} rows hold them.',
  noHeadings: 'No row looks like headings; the columns were guessed from what they hold.',
  headings: 'Row {row} holds the headings.',
  title: 'Row {row} names the bread: {name}.',
  decimalSign: 'The decimal sign is the {sign:sign}, as {shown} of {of} numbers show.',
  noSureSign: 'As many numbers have a decimal point as have a decimal comma; each is read by itself.',
  doubtfulDecimals:
    'Nothing shows what the {number:sign} in {number} is: {isSmall:in kilograms or pounds it was taken as the decimal sign|it was taken to stand between thousands}.',
  noDecimalSign: 'No number has a decimal sign.',
  headingSays: '{column:column} is read as {use}.',
  headingLeftOut: '{column:column} is not something a formula keeps.',
  headingTaken: '{column:column} looks like {use} too, and an earlier column was taken for that.',
  ofOneStage: '{column:column} is the amounts of one stage.',
  ofNoStage: '{column:column} is not of one stage, and each stage has a column of its own.',
  ofWholeDough:
    '{column:column} looks like a percentage of the whole dough, which is worked out anew and not read.',
  oneStageOnly:
    '{column:column} is a column of its own for one stage, or for all. Such a table is read stage by stage: say which column to read.',
  besideTheFirst:
    '{column:column} holds names of ingredients again: taken as another table beside the first, read after it.',
  ofOneBatch: '{column:column} is the amounts for one of several batches.',
  batches: 'Columns hold the amounts for {count} batches: the first is read.',
  knownNames: '{column:column} holds names of ingredients, such as {example:quoted}.',
  names: '{column:column} holds names.',
  onlyNames: '{column:column} is the only column of names, so it was taken for the ingredients.',
  units: '{column:column} holds units of weight.',
  stageNames: '{column:column} names stages, such as {example:quoted}.',
  repeatedNames: '{column:column} says the same of several rows: taken as the name of the bread.',
  notes: '{column:column} holds words: taken as notes.',
  unknown: 'It is not known what {column:column} holds; it is not read.',
  perCentSigns: '{column:column} holds numbers with a sign of per cent.',
  prices: '{column:column} holds prices; it is not read.',
  rowNumbers: '{column:column} counts the rows; it is not read.',
  amountsWithUnits: '{column:column} holds amounts with their units.',
  floursOfHundred:
    '{column:column} holds plain numbers, and those of the flours add to 100: taken as percentages.',
  plainNumbers: '{column:column} holds plain numbers: taken as grams. Say so if they are something else.',
  brokenNumber:
    '{column:column} and a column beside it may be one number with a comma in it, so they are not read. Save the table with semicolons or tabs, or say what they are.',
  stagesInColumns: 'Headings name stages: each such column was taken as the amounts of its stage.',
  stagesSideBySide: 'Tables stand side by side under the names of their stages.',
  stagesInAColumn: 'A column names the stage of each line.',
  stagesByHeadings: 'Rows of their own head the stages: {names:list}.',
  stagesByBlanks: 'Blank rows part the table into {blocks} blocks; each was taken as a stage.',
  oneDough: 'Nothing parts the table into stages: all lines are one dough.',
} as const

/** Why a table, or one of its rows, is not read. */
const errors = {
  tableRefused: '{why}',
  tooLarge:
    'This table has {count:count} {what}; {most:count} are the most that is read at once. Bring it in by parts.',
  tableNotText:
    'This is not a text file: it holds null bytes. Save the table as CSV in UTF-8, and bring that in.',
  longCell: 'Row {row} has a cell of {count:count} characters; {most:count} are the most.',
  quotes:
    'Row {row} {isOpen:opens a quotation mark that is never closed, so that it and all that follows|has a quotation mark out of place and} could not be read. A cell that starts with one has to end with one, and those within are doubled.',
  rowNotAsWide:
    'Row {row} has {count} cells where the table has {columns} columns, so that it is not known which is which. A comma within a cell needs quotation marks around the cell.',
  namesNothing: 'Row {row} gives {text:quoted} and names no ingredient. Give it one, or empty the row.',
  tableEmpty: 'There is nothing to read: the table is empty.',
  notATable:
    'Nothing separates names from amounts in this text, so it is not a table. If it is a recipe in words, bring it in as that.',
  columnsNotSaid:
    'To read this table, say which column holds {hasNames:their amounts|the ingredients}{hasNeither: and which their amounts|}.',
  rowOfUnsaidColumns: 'It is not known which columns hold the ingredients and their amounts.',
  lineOfTooMany: 'It is beyond the most lines a formula can hold.',
  noLine: 'No line was found in this table: no row has an ingredient and an amount.',
} as const

/** Why the text of a cell is no amount; within a sentence. */
const noAmounts: Readonly<Record<NoAmount, string>> = {
  tooLong: 'is too long to be an amount',
  notEdible: 'is a temperature or a time',
  negative: 'is below zero, or in brackets',
  calculation: 'is a calculation or an error of the program that wrote it',
  unknownUnit: 'has a unit that is not known',
  noAmount: 'cannot be read as an amount',
}

/** What the baker should look at. */
const warnings = {
  stoppedBeforeTheEnd: 'Reading was stopped before the end; nothing was added.',
  unreadAmount:
    'Row {row} gives {cell:quoted} for {name}, which {why:noAmount}. {isOnly:The line is kept without an amount|It was not read}, and the text is in its note.',
  withoutAnAmount: 'Row {row} gives no amount for {name}. The line is kept without one.',
  countedEggs: 'Row {row} gives {amount} for {name}. If they are counted, write {pieces} each.',
  readAsCounted:
    'Row {row} gives {pieces} for {name}, read as so many of them. Write {pieces} g if grams are meant.',
  nameIsShort: 'Row {row} has {name}: what that is short for is not known. Write it in full.',
  doubtfulSign:
    'Row {row} has {typed:quoted} for {name}, which is read as {read}: the table does not show whether its {typed:sign} is a decimal sign. Choose the other one if that is not meant.',
  wholeAndPart:
    'Row {row} has {typed:quoted} for {name}, which is read as {read}: a whole number and a part of one. Type it anew if that is not meant.',
  twoWeights:
    'Row {row} gives {first:quoted} and {other:quoted} for {name}, which are {a:grams} and {b:grams}. The first is read.',
  anotherStage:
    'Row {row}, {name}, follows a blank row without a heading: taken as the start of another stage.',
  headedAgain: 'Row {row} heads {name:quoted} a second time: taken as more of the same stage.',
  anotherFormula:
    'Row {row} heads {name:quoted} again after the final dough: taken as the start of another formula, {formula:quoted}.',
  formulaWithoutLines: 'No lines were found for {name}, so it was left out.',
  namedByItsTaker:
    'The lines from row {row} on have no heading; {final} takes {name}, so they were taken as {name}.',
  stageWithoutAName:
    'The lines from row {row} on have no heading and were called {name}. Name them after the line that takes them.',
  notTaken: 'No line takes {name}. Add one of that name to the stage that does.',
  noLineTakes: 'No line takes {name}: one of {grams:grams}, all of it, was added to {final}.',
  takenAs: 'Row {row}, {like:quoted}, was taken to be {name}, which no other line takes.',
  percentageOff:
    'Row {row} gives {percent:per100} and {weight:grams} for {name}, but {percent:per100} of {base:grams} is {share:grams}. The weight is read.',
  percentagesOff:
    '{rows:rows} of {name} have percentages that do not agree with their weights, if 100 % is {base:grams}. The weights are read.',
  ofAllFlour:
    'The flours of all stages of {name} add to {all:per100}, those of {final} to {own:per100}: the percentages are of all the flour, and were read as weights for 1,000 g of it.',
  sharesOfOne:
    'The percentages of {name} are written as shares of 1: its flours add to 1. They were read as per cent, 1 being 100 %.',
  totalDiffers: 'The file says {name} {printed:figure}; its lines add to {computed:figure}.',
} as const

/** What was decided without a doubt, and is told all the same. */
const remarks = {
  wholeTaken: 'Row {row} gives no amount of {name}: all of it, {grams:grams}, was taken.',
  readAs: 'Row {row} gives {cell:quoted} for {name}, read as {amount}; the text is in its note.',
  withoutUnits: '{rows:rows} {rows:gives|give} a number without a unit: taken as grams.',
  partOfTheStage: 'Row {row}, {name}, follows a blank row without a heading: taken as part of {stage}.',
  finalDoughLast:
    '{name} stands before other stages in the table. The final dough comes last here, so it was put there.',
  percentagesKept:
    '{name} gives percentages and weights. The percentages of {final} are read, of {flour:grams} of flour: they have the more digits{agree:, and agree with the weights|}.',
  weightsKept:
    '{name} gives percentages and weights. The weights are read{agree:; the percentages agree with them|}.',
  shownAnewOfAllFlour:
    'The percentages of {name} are of the whole flour in the file and are shown anew on each stage’s own flour, the weights unchanged.',
  percentagesShownAnew:
    'The flour of {name} is {share:per100} in the file; its percentages are shown anew on the stage’s own flour, the weights unchanged.',
} as const

/** Why a row without an amount was taken as it was. */
const rowReasons = {
  sentence: 'It reads like a remark.',
  nothingBelow: 'It has no amount, and no lines stand below it.',
  belowAHeading: 'It stands between a heading and the lines below it.',
  ingredient: 'It names an ingredient.',
  amongLines: 'It stands among lines.',
  linesBelow: 'Lines stand below it.',
  stageBeside: 'Its stage is named beside it.',
  stageTaken: 'It takes a stage above.',
  stageName: 'It is called as stages are.',
  colon: 'Lines stand below its colon.',
  totalBeside: 'What the lines below it add to stands beside it.',
  anotherNameBelow: 'Another name stands below it.',
  firstOfLines: 'It is the first name over the lines.',
} as const

/** What is said of a row or a total that is as it should be, or that is not compared. */
const facts = {
  amountBelow: 'Its amount stands in the row below.',
  totalWithoutAFigure: 'Row {row} names a total and gives no figure that can be read.',
  alsoIn: 'Also {hasAmount:|without an amount}{amount} in {stage}.',
  totalAgrees: 'The file says {name} {printed:figure}, and its lines add to that.',
  totalRounded:
    'The file says {name} {printed:figure}; its lines add to {computed:figure}, which rounding explains.',
  totalOfUnknownFigures:
    'The file says {name} {printed:figure}; it was not compared, for {rows:row} {rows:has|have} no such figure.',
  totalOfUnknown:
    'The file says {name} {printed:figure}; it was not compared, for it is not known what {label} adds up.',
} as const

const all = { ...guesses, ...errors, ...warnings, ...remarks, ...rowReasons, ...facts } as const

type Rows = readonly number[]

const signs: Readonly<Record<string, string>> = {
  '\t': 'Tabs',
  ';': 'Semicolons',
  '|': 'Upright strokes',
  ',': 'Commas',
}

/** How figures are said. */
const said = {
  grams,
  per100,
  quoted,
  count: (n: number) => n.toLocaleString('en-GB'),
  sign: (number: string) => (number.includes(',') ? 'comma' : 'point'),
  delimiter: (sign: string) => signs[sign] ?? 'Gaps of two and more blanks',
  column: ({ heading, at }: { readonly heading: string; readonly at: number }) =>
    heading.trim() === '' ? `Column ${at + 1}` : quoted(heading.trim()),
  figure: ({ unit, value }: { readonly unit: 'grams' | 'percent'; readonly value: number }) =>
    unit === 'grams' ? grams(value) : per100(value),
  noAmount: (why: NoAmount) => noAmounts[why],
  list: (names: readonly string[]) => `${names.slice(0, 4).join(', ')}${names.length > 4 ? ', …' : ''}`,
  rows: (rows: Rows) => `${rows.length === 1 ? 'Row' : 'Rows'} ${rowNumbers(rows)}`,
  row: (rows: Rows) => `${rows.length === 1 ? 'row' : 'rows'} ${rowNumbers(rows)}`,
}

/** `3`, `3 and 4`, `3, 4, 5 and 12 more`. */
function rowNumbers(rows: Rows): string {
  const few = rows.length > 9 ? [...rows.slice(0, 8), `${rows.length - 8} more`] : rows
  return new Intl.ListFormat('en-GB').format(few.map(String))
}

/** Why something is read as it is: a code with the figures that its sentence needs. */
export type Reason = ReasonOf<typeof all, typeof said>
export type RowReason = keyof typeof rowReasons
export type ColumnReason = Extract<Reason, { readonly column: object }>['code']

export const tableSentences: Sentences<Reason> = sentencesOf(all, said)
/** A reason with its sentence for the baker. */
export const tableReason = wording(tableSentences)

/** How much a reason weighs where it is a problem. */
export const severityOf = ({ code }: Reason): 'error' | 'warning' | 'remark' =>
  code in errors ? 'error' : code in warnings ? 'warning' : 'remark'
