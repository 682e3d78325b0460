import { counted } from '../plan/words.js'

export const lookWords = {
  whatToDo: 'What to do with the file',
  merge: 'Add to this workbook',
  mergeHint: 'All that is here stays, but for what you choose below.',
  replace: 'Replace everything here',
  replaceHint: 'This workbook becomes what the file holds.',
} as const

/** What merging does: headings over names, and sentences. */
export const mergeWords = {
  newFormulas: 'New formulas, to be added',
  differentFormulas: 'Formulas that differ from yours',
  sameFormulas: 'The same here and in the file',
  newIngredients: 'New in the larder',
  differentIngredients: 'Of the larder, unlike yours',
  sameIngredients: 'Of the larder, the same',
  newDays: 'Days, to be added',
  differentDays: 'Days that differ from yours',
  sameDays: 'Days, the same',
  newBakes: 'Bakes, to be added',
  differentBakes: 'Bakes that went on in both, brought together',
  cleared: 'Deleted there: it can be brought back here too',
  later: 'For a later Tarebook, kept as it is',
  keepsName: (name: string): string => `The workbook keeps its name, ${name}.`,
  otherCurrency: (theirs: string, yours: string): string =>
    `The file’s prices are in ${theirs}, yours in ${yours}: what comes from the file comes without its price.`,
  restIsKept: (count: number): string => `Of ${count} more both are kept, or what is here in the larder.`,
} as const

/** What replacing does, likewise. */
export const replaceWords = {
  gone: 'Cleared away from here, not in the file',
  bakesGone: 'Bakes gone from here, not in the file',
  changed: 'Changed to what the file says',
  isNew: 'New',
  same: 'The same',
  called: (name: string, before: string): string =>
    `The workbook is called ${name || 'nothing'}, no longer ${before || 'nothing'}.`,
  currency: (theirs: string): string => `Prices are in ${theirs}, as in the file.`,
  leeway: 'How far waits may move is taken from the file.',
  scale: 'How your scale weighs is taken from the file.',
} as const

/** Of one thing that differs. */
export const differingWords = {
  size: (stages: number, lines: number): string => `${counted(stages, 'stage')}, ${counted(lines, 'line')}`,
  sizes: (yours: string, theirs: string): string => `Yours: ${yours}. In the file: ${theirs}.`,
  linesInFile: 'The lines in the file',
  whatToDo: (name: string): string => `What to do with ${name}`,
  both: 'Keep both',
  theirs: 'Take the file’s',
  mine: 'Keep mine',
} as const

/** `Saturday oven, 2026-12-05` */
export const dayWords = (name: string, date: string): string => `${name}, ${date}`

/** `Mill wheat, 2026-12-05` of a bake. */
export const bakeWords = (name: string, at: string): string => `${name}, ${at.slice(0, 10)}`

/** Names in a row, some of which are left out. */
export const namesWords = (names: readonly string[], more: number): string =>
  `${names.join(' · ')}${more > 0 ? ` and ${more} more` : ''}`

/** What would be lost when all is replaced. */
export interface Lost {
  readonly formulas: number
  readonly ingredients: number
  readonly days: number
  readonly bakes: number
  readonly changed: number
}

/** What is asked before all is replaced, the first and the second time. */
export function restoreQuestion({ formulas, ingredients, days, bakes, changed }: Lost, time: 1 | 2): string {
  if (time === 2) return 'Really replace everything in this workbook? One undo brings it back.'
  const parts = [
    ...(formulas > 0 ? [`${counted(formulas, 'formula')} of yours would be cleared away`] : []),
    ...(ingredients > 0
      ? [`${counted(ingredients, 'ingredient')} of your larder would be cleared away`]
      : []),
    ...(days > 0 ? [`${counted(days, 'day')} of yours would be cleared away`] : []),
    ...(bakes > 0 ? [`${counted(bakes, 'bake')} of yours would be gone`] : []),
    ...(changed > 0 ? [`${counted(changed, 'thing')} of yours would be as in the file`] : []),
  ]
  return parts.length > 0
    ? `${parts.join(', ')}. Replace all of it by the file?`
    : 'Nothing of yours would be lost. Replace all of it by the file?'
}

/** What became of the photographs of a workbook file; `left`: for want of room. */
export function photographsTaken(kept: number, left: number): string {
  const all =
    kept === 0 && left === 0
      ? 'All its photographs were here already.'
      : `${counted(kept, 'photograph')} kept.`
  return left === 0
    ? all
    : `${all} The storage of this browser is nearly full: ${counted(left, 'photograph')} or more were left in the file, and nothing else is lost.`
}
