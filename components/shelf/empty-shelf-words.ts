/** What stands in the middle while there is no formula; fetched then. */
export const emptyShelfWords = {
  readOnly: 'Nothing on the shelf',
  heading: 'Nothing on the shelf yet',
  how: 'Begin with flour at 100 %, and write water, salt and levain as percentages of it. Tarebook weighs the lines and counts the flour and water that the starter brings.',
  newFormula: 'New formula',
  examples: 'Open the examples',
  restore: 'Open a workbook file',
  bringIn: 'Bring in a file',
  unread: 'The workbook could not be read',
  meanwhile: 'You can work here meanwhile; it stays in this tab until the storage can be read again.',
  whatIsStored: 'Look at what is stored',
} as const
