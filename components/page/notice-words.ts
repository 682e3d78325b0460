export const noticeWords = {
  notices: 'Notices',
  dismiss: 'Dismiss',
  dismissThis: (notice: string): string => `Dismiss: ${notice}`,
  download: 'Download the workbook',
  downloadDamaged: 'Download as it is',
  gone: (savedAt: string, formulas: number): string =>
    `There was a workbook here with ${formulas} ${formulas === 1 ? 'formula' : 'formulas'}, last saved ${savedAt}. It is no longer in this browser. If you have a file of it, bring that in.`,
  bringIn: 'Bring in a file',
  noneTaken: (since: string): string => `No file of this workbook has been taken since ${since}.`,
  sendOut: 'Download the workbook file',
  allow: 'Allow it',
  nameFile: 'Name a file …',
  writeOver: 'Write over it',
  tryAgain: 'Try again',
  editHere: 'Edit here',
  newVersion: 'A new version of Tarebook is ready.',
  reload: 'Reload',
  deleted: (formula: string): string => `Deleted ${formula}.`,
  undo: 'Undo',
  /** `fields`: their names. */
  typedAgain: (fields: readonly string[]): string =>
    `What you typed but did not enter is back in its field: ${fields.join('; ')}. Enter it, or press Escape to drop it.`,
  typedElsewhere: (formula: string): string => `Something you typed in ${formula} is not entered yet.`,
  goThere: 'Go there',
  typedLost: (text: string): string =>
    `You had typed “${text}” in a field that is gone or has changed since.`,
  copy: 'Copy it',
} as const
