import { type Sentences, type Worded, wording } from '../../engine/index.js'
import { quoted } from './row.js'

/** Why a setting is not used as it stands. */
export type SettingDiagnostic =
  | { readonly code: 'settingUnknown' | 'settingWithoutStage' | 'settingOfFormula'; readonly setting: string }
  | { readonly code: 'settingNoteNotKept'; readonly setting: string }
  | {
      readonly code: 'settingOfNoStage'
      readonly setting: string
      readonly stage: string
      readonly formula: string
    }
  | {
      readonly code:
        | 'settingAndIngredient'
        | 'noteWithoutWords'
        | 'groupWithoutName'
        | 'buildWithoutName'
        | 'flourWeightOfStage'
        | 'baseWithoutName'
    }
  | { readonly code: 'baseNotFound'; readonly ingredient: string; readonly stage: string }
  | { readonly code: 'fermentsNotUnderstood'; readonly amount: string; readonly stage: string }
  | {
      readonly code: 'keepBackNotUnderstood' | 'flourWeightNotUnderstood' | 'makeNotUnderstood'
      readonly amount: string
    }
  | { readonly code: 'lossNotUnderstood'; readonly amount: string; readonly setting: string }
  | { readonly code: 'holdOfNoReading'; readonly reading: string }
  | {
      readonly code: 'holdNotUnderstood'
      readonly amount: string
      readonly setting: string
      readonly measures: 'weight' | 'percentage'
    }
  | { readonly code: 'stepOfNoKind'; readonly kind: string }
  | { readonly code: 'holdWithoutGiver' }
  | { readonly code: 'giverNotFound' | 'giverGivesAlready'; readonly ingredient: string }
  | { readonly code: 'jottingRefused'; readonly why: string } // a sentence of the room of amounts

/** `row` is as a spreadsheet counts it; a setting that is not used may be kept. */
type OfRow<D> = D extends unknown ? D & { readonly row: number; readonly isKept: boolean } : never

/** What reading a file of formulas tells. */
export type CsvDiagnostic =
  | { readonly code: 'csvEmpty' | 'csvNotText' | 'csvWithoutHeadings' | 'csvWithoutRows' }
  | {
      readonly code: 'columnsMissing'
      readonly columns: readonly string[]
      readonly headings: readonly string[] // those of the file
    }
  | {
      readonly code: 'columnsNotRead'
      readonly columns: readonly { readonly heading: string; readonly number: number }[] // 1-based
    }
  | { readonly code: 'tooManyCells'; readonly row: number; readonly cells: number; readonly headings: number }
  | { readonly code: 'quoteNeverClosed' | 'quoteOutOfPlace'; readonly row: number }
  | { readonly code: 'numberDoubtful'; readonly row: number; readonly typed: string; readonly read: string }
  | { readonly code: 'ingredientMissing'; readonly row: number }
  | {
      readonly code: 'unitMissing'
      readonly row: number
      readonly ingredient: string
      readonly amount: string
    }
  | {
      readonly code: 'onlyWholeDough' | 'onlyBatchGrams' | 'stageCountsAsItself'
      readonly row: number
      readonly ingredient: string
    }
  | {
      readonly code: 'countsAsNotUnderstood' | 'countsAsUnlikeLarder' | 'countsAsTwice'
      readonly row: number
      readonly ingredient: string
      readonly countsAs: string // as the file says
    }
  | { readonly code: 'settingTwice'; readonly row: number; readonly setting: string }
  | {
      readonly code: 'nameCarried'
      readonly row: number
      readonly others: number // rows without the name
      readonly column: 'formula' | 'stage'
      readonly unnamed: string
    }
  | OfRow<SettingDiagnostic>

/** `Row 5 sets …`, and that it is kept where it is. */
const aboutRow =
  <F>(words: (figures: F) => string) =>
  (figures: F & { readonly row: number; readonly isKept: boolean }): string =>
    `Row ${figures.row} ${words(figures)}${figures.isKept ? ' It is kept.' : ''}`

export const csvSentences: Sentences<CsvDiagnostic> = {
  csvEmpty: 'This file is empty.',
  csvNotText: 'This is not a text file, or not in UTF-8. Choose a CSV file, or save it as CSV UTF-8.',
  csvWithoutHeadings: 'This file has no headings.',
  csvWithoutRows: 'This file has headings but no rows.',
  columnsMissing: ({ columns, headings }) =>
    `This file has no column called ${columns.join(' and none called ')}; its first row names ${headings.map(quoted).join(', ')}. Name the columns of the ingredients and their amounts so.`,
  columnsNotRead: ({ columns }) => {
    const names = columns.map(({ heading, number }) =>
      heading === '' ? `number ${number}` : quoted(heading),
    )
    return `These columns are not known, or come twice, and were not read: ${names.join(', ')}.`
  },
  tooManyCells: ({ row, cells, headings }) =>
    `Row ${row} has ${cells} cells where the headings are ${headings}, and was left out. A comma within a cell needs quotation marks around the cell.`,
  quoteNeverClosed: ({ row }) =>
    `Row ${row} opens a quotation mark that is never closed, so that it and all that follows could not be read. Close it, or double it if it is part of the text.`,
  quoteOutOfPlace: ({ row }) =>
    `Row ${row} has a quotation mark out of place and could not be read. A cell that starts with one has to end with one, and those within are doubled.`,
  numberDoubtful: ({ row, typed, read }) =>
    `Row ${row} has ${quoted(typed)}, which is read as ${read}. If that is not meant, write it without a mark between thousands and with a decimal point.`,
  ingredientMissing: ({ row }) =>
    `Row ${row} names no ingredient and was left out. Give it one, or empty the row.`,
  unitMissing: ({ row, ingredient, amount }) =>
    `Row ${row} gives no unit for ${ingredient}: taken as ${amount}.`,
  onlyWholeDough: ({ row, ingredient }) =>
    `Row ${row} gives only a whole dough percentage for ${ingredient}, which is not read. Give it an amount.`,
  onlyBatchGrams: ({ row, ingredient }) =>
    `Row ${row} gives only the grams of a batch for ${ingredient}, which are not read. Give it an amount.`,
  stageCountsAsItself: ({ row, ingredient }) =>
    `Row ${row}: ${ingredient} is a stage and counts as what is in it.`,
  countsAsNotUnderstood: ({ row, ingredient, countsAs }) =>
    `Row ${row} says that ${ingredient} counts as ${quoted(countsAs)}, which is not understood. Write flour, water, salt, other, or starter and its hydration: starter 125%.`,
  countsAsUnlikeLarder: ({ row, ingredient, countsAs }) =>
    `Row ${row}: ${ingredient} counts as ${countsAs.trim()} in this formula, unlike in your larder. The formula keeps its own meaning.`,
  countsAsTwice: ({ row, ingredient, countsAs }) =>
    `Row ${row} says that ${ingredient} counts as ${countsAs.trim()}; an earlier row said otherwise and stands.`,
  settingTwice: ({ row, setting }) =>
    `Row ${row} sets ${quoted(setting)} a second time. The first stands; take one away.`,
  nameCarried: ({ row, others, column, unnamed }) =>
    `Row ${row}${others === 0 ? '' : ` (and ${others} more)`} names no ${column}: taken as part of the ${column} above, or of “${unnamed}” where there is none.`,
  settingUnknown: aboutRow(({ setting }) => `sets ${quoted(setting)}, which is not known here.`),
  settingWithoutStage: aboutRow(
    ({ setting }) => `sets ${quoted(setting)} without saying for which stage. Name the stage.`,
  ),
  settingOfFormula: aboutRow(
    ({ setting }) => `sets ${quoted(setting)} of a stage. It is the formula’s own: leave the stage empty.`,
  ),
  settingNoteNotKept: aboutRow(({ setting }) => `has a note on ${quoted(setting)}, which is not kept.`),
  settingOfNoStage: aboutRow(
    ({ setting, stage, formula }) =>
      `sets ${quoted(setting)} of ${quoted(stage)}, but ${formula} has no such stage.`,
  ),
  settingAndIngredient: aboutRow(
    () => 'has both an ingredient and a setting and was left out. Put them in two rows.',
  ),
  noteWithoutWords: aboutRow(() => 'is a note without words. Write it in the amount column.'),
  groupWithoutName: aboutRow(() => 'is a group without a name. Write it in the amount column.'),
  buildWithoutName: aboutRow(() => 'is a build without a name. Write it in the amount column.'),
  flourWeightOfStage: aboutRow(
    () => 'sets the flour weight of a stage. It is the formula’s own: leave the stage empty.',
  ),
  baseWithoutName: aboutRow(() => 'marks no ingredient as base. Name one in the amount column.'),
  baseNotFound: aboutRow(
    ({ ingredient, stage }) =>
      `marks ${quoted(ingredient)} as base, but ${stage} has no such line left to mark.`,
  ),
  fermentsNotUnderstood: aboutRow(
    ({ amount, stage }) => `says ${quoted(amount)} where only yes or no tells whether ${stage} ferments.`,
  ),
  stepOfNoKind: aboutRow(
    ({ kind }) =>
      `is a step that counts as ${quoted(kind)} and was left out. Write hands, wait or bake under counts as.`,
  ),
  keepBackNotUnderstood: aboutRow(
    ({ amount }) => `gives ${quoted(amount)} as keep-back. Write a weight, like 50 g, or seed.`,
  ),
  flourWeightNotUnderstood: aboutRow(
    ({ amount }) => `gives ${quoted(amount)} as flour weight. Write a weight, like 1000 g.`,
  ),
  makeNotUnderstood: aboutRow(
    ({ amount }) =>
      `says to make ${quoted(amount)}, which is not understood. Write 6 × 900 g, 5400 g dough, 1000 g flour, all of 310 g Levain, or 2.5 times.`,
  ),
  lossNotUnderstood: aboutRow(
    ({ amount, setting }) =>
      `gives ${quoted(amount)} as ${setting}. Write a percentage from 0 to below 100, like 2%.`,
  ),
  holdOfNoReading: aboutRow(({ reading }) => `holds ${quoted(reading)}, which is not a reading known here.`),
  holdNotUnderstood: aboutRow(
    ({ amount, setting, measures }) =>
      `has ${quoted(amount)} for ${quoted(setting)}. Write ${measures === 'weight' ? 'a weight, like 2000 g' : 'a percentage, like 75%'}.`,
  ),
  holdWithoutGiver: aboutRow(() => 'does not say which line of the final dough gives. Name its ingredient.'),
  giverNotFound: aboutRow(
    ({ ingredient }) =>
      `says that ${ingredient} gives, but the final dough has no such line. Name one of its ingredients.`,
  ),
  giverGivesAlready: aboutRow(
    ({ ingredient }) =>
      `says that ${ingredient} gives, but it gives for another reading already. Let another line give.`,
  ),
  jottingRefused: aboutRow(({ why }) => `has a jotting that cannot be used: ${why}`),
}

/** A diagnostic of a file of formulas with its sentence. */
export const csvProblem: (diagnostic: CsvDiagnostic) => Worded<CsvDiagnostic> = wording(csvSentences)
