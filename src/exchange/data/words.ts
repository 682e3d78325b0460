import type { LeftOut } from '../../dough/data/left-out.js'
import { type Sentences, wording } from '../../engine/index.js'
import { quoted } from '../csv/row.js'

/** What it was left out of: by its name, or its place in the file from 1; of a link there is only one. */
export interface DataItem {
  readonly item: 'formula' | 'ingredient' | 'day' | 'bake' | 'deleted thing'
  readonly name?: string
  readonly place?: number
}

type OfItem<D> = D extends unknown ? D & DataItem : never

/** What reading and writing workbook files and links tells. */
export type DataDiagnostic =
  | { readonly code: 'fileTooLong'; readonly characters: number; readonly most: number }
  | { readonly code: 'fileEmpty' | 'fileNotJson' | 'fileNotWorkbook' | 'fileWithoutVersion' }
  | { readonly code: 'fileTooDeep'; readonly most: number }
  | { readonly code: 'fileOfNewerVersion'; readonly version: number; readonly known: number }
  | {
      readonly code: 'tooManyItems'
      readonly items: 'formulas' | 'ingredients' | 'days' | 'bakes' | 'deleted things'
      readonly count: number
      readonly most: number
    }
  | {
      readonly code:
        | 'withoutFormulas'
        | 'nameUnreadable'
        | 'scaleUnreadable'
        | 'leewayUnreadable'
        | 'currencyUnreadable'
    }
  | { readonly code: 'listUnreadable'; readonly item: DataItem['item'] }
  | ({ readonly code: 'itemDamaged' } & DataItem)
  | { readonly code: 'moreUnreadable'; readonly count: number }
  | {
      readonly code: 'tooManyLines' | 'tooManyStages'
      readonly formula: string
      readonly count: number
      readonly most: number
    }
  | {
      readonly code: 'linkTooLong'
      readonly formula: string
      readonly characters: number
      readonly most: number
    }
  | { readonly code: 'linkDamaged' | 'linkOverlong' | 'linkWithoutFormula' | 'linkOfNewerVersion' }
  | { readonly code: 'linkUnpacksTooLarge' | 'browserWithoutStreams' }
  | OfItem<LeftOut>

const inWords = (count: number): string => count.toLocaleString('en-GB')
const millions = (count: number): number => Math.round(count / 1e6)

const withArticle = (what: string): string => `${/^[aeiou]/.test(what) ? 'an' : 'a'} ${what}`

const itemWords = ({ item, name, place }: DataItem): string =>
  `The ${item}${name === undefined ? (place === undefined ? '' : ` number ${place}`) : ` ${quoted(name)}`}`

export const dataSentences: Sentences<DataDiagnostic> = {
  fileTooLong: ({ characters, most }) =>
    `This file has ${millions(characters)} million characters; a workbook file has at most ${millions(most)} million.`,
  fileEmpty: 'This file is empty.',
  fileNotJson:
    'This is not a workbook file, or not the whole of one. Choose a file that Tarebook wrote, or read formulas from a table instead.',
  fileNotWorkbook: 'This is not a workbook file of Tarebook. Choose a file that “Send out” wrote.',
  fileWithoutVersion: 'This workbook file does not say of which version it is, so it cannot be read.',
  fileTooDeep: ({ most }) =>
    `This file nests things more than ${most} deep, which no workbook does. It was not read.`,
  fileOfNewerVersion: ({ version, known }) =>
    `This workbook file was written by a newer Tarebook (version ${version} of the file; this one reads up to ${known}). Bring Tarebook up to date and read it again; nothing was changed.`,
  tooManyItems: ({ items, count, most }) => `This file holds ${count} ${items}; at most ${most} are read.`,
  withoutFormulas: 'This file holds no list of formulas.',
  nameUnreadable: 'The name of the workbook could not be read.',
  scaleUnreadable: 'How the scale weighs could not be read; it is the usual one.',
  currencyUnreadable: 'The currency of its prices could not be read. Choose it again in the larder.',
  leewayUnreadable: 'How far waits may move could not be read; it is the usual 15 %.',
  listUnreadable: ({ item }) => `The ${item}s of this file could not be read.`,
  itemDamaged: item => `${itemWords(item)} is damaged and was left out.`,
  moreUnreadable: ({ count }) => `There are ${count} more things that could not be read.`,
  tooManyLines: ({ formula, count, most }) =>
    `${formula} has ${inWords(count)} lines; a formula holds at most ${inWords(most)}. Bring it in in parts.`,
  tooManyStages: ({ formula, count, most }) =>
    `${formula} has ${inWords(count)} stages; a formula holds at most ${inWords(most)}. Bring it in in parts.`,
  linkTooLong: ({ formula, characters, most }) =>
    `${formula} is too long for a link: ${characters} characters, where ${most} get through everywhere. Send it as a file instead.`,
  linkDamaged: 'This link is damaged or not whole. Ask for it again, or for the formula as a file.',
  linkOverlong: 'This link is longer than any that Tarebook makes. It was not opened.',
  linkWithoutFormula: 'There is no formula in this link.',
  linkOfNewerVersion: 'This link was made by a newer Tarebook. Bring this one up to date and open it again.',
  linkUnpacksTooLarge: 'This link unpacks to more than any formula holds. It was not opened.',
  browserWithoutStreams:
    'This browser cannot make or read such links: it is older than 2023. Send the formula as a file instead.',
  fieldNotUnderstood: ({ field, ...item }) =>
    `${itemWords(item)} has ${withArticle(field)} that is not understood; it is left out.`,
  itemsUnreadable: ({ listed, count, ...item }) =>
    `${itemWords(item)} has ${count === 1 ? withArticle(listed) : `${count} times ${withArticle(listed)}`} that could not be read.`,
  idsRepeated: item => `${itemWords(item)} has two parts with one id; one of them has a new one.`,
}

/** A diagnostic of a workbook file or a link with its sentence. */
export const dataProblem = wording(dataSentences)

/** What bringing a workbook file in is called when it is told and when it is undone. */
export const restoreLabels = {
  replace: 'Replace the workbook by a file',
  add: 'Add from a workbook file',
} as const

/** The name of an ingredient that came with a file beside one of the same name. */
export const fromFile = (name: string): string => `${name} (from the file)`
