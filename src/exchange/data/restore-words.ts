/** What bringing a workbook file in is called when it is told and when it is undone. */
export const restoreLabels = {
  replace: 'Replace the workbook by a file',
  add: 'Add from a workbook file',
} as const

/** The name of an ingredient that came with a file beside one of the same name. */
export const fromFile = (name: string): string => `${name} (from the file)`
