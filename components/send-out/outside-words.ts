/** Of the copy that is kept up to date outside the browser. */
export const outsideWords = {
  heading: 'A copy outside the browser',
  how: 'Name a file once, and Tarebook keeps this workbook up to date in it, a few seconds after each change.',
  name: 'Name a file …',
  nameAnother: 'Name another file …',
  kept: (file: string, at: string): string => `${file} is kept up to date. Last written ${at}.`,
  waits: (file: string): string => `${file} is kept up to date. It has not been written yet.`,
  writeNow: 'Write it now',
  stop: 'Keep no copy',
  stopped: (file: string): string => `${file} is no longer kept up to date. It stays as it is.`,
  cannot: 'This browser cannot keep a file up to date by itself. Download one now and then.',
  remind: 'Remind me to take a file',
  taken: (at: string): string => `Last taken ${at}.`,
  notTaken: 'None has been taken in this browser yet.',
} as const

export const reminderWords = { never: 'never', week: 'each week', month: 'each month' } as const
