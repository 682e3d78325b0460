export const cautionsWords = {
  allergens: 'Allergens',
  asListedIn: 'as listed in',
  publicLists: 'Public list of allergens',
  notChosen: (list: string): string =>
    `Nobody has chosen a list in this browser yet: this is ${list}. Choose another above.`,
  noneListed: (list: string): string =>
    `The larder lists none of its ingredients among ${list}. That clears it for nobody.`,
  cautions: 'Cautions',
} as const
