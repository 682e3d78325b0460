import { allergenLists } from '../src/dough/allergen-lists.js'
import type { Allergens } from '../src/dough/larder.js'
import { keepOwnChoice, ownChoice } from './own-choices.js'

export type ListName = keyof Allergens

/** How a public list is called where it is named by itself. */
export const listWords: Readonly<Record<ListName, string>> = {
  us: 'the nine major allergens of the United States',
  eu: 'the fourteen allergens of the European Union',
  canada: 'the priority allergens of Canada',
}

/** The public list last chosen in this browser, or that of the country its language names. */
export function ownList(language: string): ListName {
  const region = /-([a-z]{2})$/i.exec(language)?.[1]?.toLowerCase()
  const usual = region === 'us' ? 'us' : region === 'ca' ? 'canada' : 'eu'
  return ownChoice(
    'allergen list',
    allergenLists.map(({ list }) => list),
    usual,
  )
}

export const keepOwnList = (list: ListName): void => keepOwnChoice('allergen list', list)

/** `Not known: ground cardamom; lemon zest.`: what nobody has said anything of. */
export function notKnownSentence(phrases: readonly string[]): string {
  const joined = phrases.map((phrase, at) => (at ? phrase.replace(/^not known: /, '') : phrase)).join('; ')
  return `${joined.charAt(0).toUpperCase()}${joined.slice(1)}.`
}
