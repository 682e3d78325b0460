import type { Allergens } from './larder.js'

export type ListName = keyof Allergens

/** The public lists of allergens, by the names of those who keep them. */
export const allergenLists: readonly { readonly list: ListName; readonly name: string }[] = [
  { list: 'us', name: 'United States' },
  { list: 'eu', name: 'European Union' },
  { list: 'canada', name: 'Canada' },
]
