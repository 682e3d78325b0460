/** The database of the workbook that the page shows. */
export const databaseOfPage = (): string => document.querySelector('tb-app')?.database || 'tarebook'
