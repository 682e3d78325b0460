export const cautionsWords = {
  allergens: 'Allergens',
  asListedIn: 'as listed in',
  publicLists: 'Public list of allergens',
  notChosen: (list: string): string =>
    `No list is chosen in this browser yet, so this is ${list}. You can choose another above.`,
  noneListed: (list: string): string =>
    `The larder lists none of its ingredients among ${list}. That alone does not say that it suits anybody with an allergy: check your suppliers’ labels.`,
  cautions: 'Cautions',
} as const
