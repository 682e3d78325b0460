export const rescueWords = {
  nothing: 'No workbook of Tarebook was found in this browser’s storage.',
  found: (formulas: number, unread: number): string =>
    `Found: ${formulas} ${formulas === 1 ? 'formula' : 'formulas'}${
      unread ? `; ${unread} more ${unread === 1 ? 'part' : 'parts'} could not be read, or not all of it` : ''
    }.`,
  notRead: 'The storage could not be read. Close other tabs of Tarebook and load this page again.',
} as const
