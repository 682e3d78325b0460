import { methodCautions } from '../../day/method/cautions.js'
import { allergensOf, cautionsOf } from '../../dough/about/allergens.js'
import {
  allergenSentence,
  cautionWords,
  localCodesSentence,
  notKnownSentence,
} from '../../dough/about/words.js'
import { type ListName, listWords } from '../../dough/larder/allergen-lists.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { listedSentence } from './words.js'

/** The list that is named where nobody has chosen one: the longest. */
export const usualList: ListName = 'eu'

/**
 * What is sent out of a formula beside its figures, a paragraph each: what the larder lists of it among a public list, with
 * the ingredients it is in, and the cautions it gives cause for. Information, never a clearance.
 */
export function cautionsSaid(sheet: FigureSheet, list: ListName): string[] {
  const { notKnown, ...all } = allergensOf(sheet)
  const listed = all[list].map(({ entry, ingredients }) => `${entry} in ${ingredients.join(', ')}`)
  const cautions = cautionsOf(sheet)
  return [
    listedSentence(listWords[list], listed),
    ...(notKnown.length > 0 ? [notKnownSentence(notKnown)] : []),
    allergenSentence,
    ...cautions.map(({ code, message }) => `${cautionWords[code]}: ${message}`),
    ...methodCautions(sheet).map(({ about, message }) => `${about}: ${message}`),
    ...(cautions.length > 0 ? [localCodesSentence] : []),
  ]
}
