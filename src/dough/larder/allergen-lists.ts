import type { Allergens } from '../document/larder.js'

export type ListName = keyof Allergens

/** The public lists of allergens, by the names of those who keep them. */
export const allergenLists: readonly { readonly list: ListName; readonly name: string }[] = [
  { list: 'us', name: 'United States' },
  { list: 'eu', name: 'European Union' },
  { list: 'canada', name: 'Canada' },
]

/** How a public list is called where it is named by itself. */
export const listWords: Readonly<Record<ListName, string>> = {
  us: 'the nine major allergens of the United States',
  eu: 'the fourteen allergens of the European Union',
  canada: 'the priority allergens of Canada',
}
