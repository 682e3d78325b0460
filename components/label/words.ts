export const labelBarWords = {
  way: 'Written as in',
  copyText: 'Copy as text',
  copyHtml: 'Copy as HTML',
  copiedText: 'Copied. Allergens in the list are in capitals.',
  copiedHtml: 'Copied as a page.',
  notCopied: 'The browser did not allow copying. Select the label and copy it.',
  toCheck: 'What to check',
  bakeLoss: (bread: string): string => `${bread} loses in baking, per cent of the dough`,
  losesInBaking: (bread: string): string => `${bread} loses in baking`,
  notAPart: (typed: string): string =>
    `“${typed}” is not a percentage. Write one such as 12, from 0 to below 100.`,
  labels: (count: number): string => `${count} labels`,
  noList: 'There is no list yet.',
} as const

/** Above what is to be settled of a bread, and what is to be known of all. */
export const checkNames = { own: 'Before it is used', rules: 'How it is written' } as const
