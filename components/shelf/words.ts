export const shelfWords = {
  shelf: 'Shelf',
  lookFor: 'Look for a formula',
  empty: 'Nothing on the shelf yet.',
  unread: 'What is stored could not be read.',
  noneCalled: (sought: string): string => `No formula contains “${sought}”.`,
  newFormula: 'New formula',
  blank: 'Blank',
  blankNote: 'by percentages',
  exampleNote: 'example',
  cleared: (count: number): string => `Cleared away: ${count}`,
  newNameFor: (formula: string): string => `New name for ${formula}`,
} as const

/** Entries of a formula's menu. */
export const formulaActions = {
  name: (formula: string): string => `Actions for ${formula}`,
  sendOut: 'Send out',
  setBeside: 'Set beside…',
  printCard: 'Print a card',
  label: 'Label…',
  rename: 'Rename',
  duplicate: 'Duplicate',
  delete: 'Delete',
} as const

/**
 * Beneath the name of a formula: `75 % true, 10 % prefermented`, `63 % moisture, 5 % true`. Percentages come with their digits;
 * moisture where it leads.
 */
export const shelfReadingWords = (
  trueHydration: string,
  moisture: string | undefined,
  prefermented: string | undefined,
): string =>
  `${moisture === undefined ? '' : `${moisture} % moisture, `}${trueHydration} % true${prefermented === undefined ? '' : `, ${prefermented} % prefermented`}`
export const noHydration = 'no hydration yet'
