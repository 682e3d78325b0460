import { listed } from '../../../src/engine/index.js'

/** Of the orders. */
export const ordersWords = {
  label: 'What is ordered',
  hint: 'Type or paste them: 12 mill wheat, 8 rye, one customer after another, or a table of names and numbers. What is ordered of one bread is added up.',
  example: '12 mill wheat, 8 rye',
  understood: 'Understood',
  count: (bread: string, count: string): string => `${count} ${bread}`,
  isNew: 'new on this day',
  inPlaceOf: (before: string): string => `in place of ${before}`,
  adding: (counts: readonly string[]): string => counts.join(' + '),
  takenFor: (written: string): string => `“${written}”`,
  which: (written: string): string => `Which bread is “${written}”?`,
  mean: (bread: string): string => `${bread}?`,
  choose: 'Choose a bread',
  leaveOut: 'Leave it out',
  weightOf: (bread: string): string => `What does a piece of ${bread} weigh as dough?`,
  unread: (texts: readonly string[]): string =>
    `Not understood, and left in the field: ${listed(texts.map(text => `“${text}”`))}.`,
  aside: (names: readonly string[]): string => `Left aside, as headings or as who ordered: ${listed(names)}.`,
  others: (breads: readonly string[]): string => `Not ordered, and left as they are: ${listed(breads)}.`,
  nothing: (bread: string): string => `${bread}: none. Take it off the day if nobody wants it.`,
  set: 'Bake so many',
  chooseFirst: (written: string): string => `Choose a bread for “${written}”, or leave it out.`,
  weighFirst: (bread: string): string => `Write what a piece of ${bread} weighs, such as 900.`,
  done: (breads: readonly string[], day: string): string => `On ${day}: ${listed(breads)}.`,
  same: 'That is what is baked already.',
} as const
