import type { Hold } from '../../../src/dough/document/formula.js'
import { holdWords } from '../../../src/dough/document/words.js'

/** Entries of a row's menu. */
export const labels = {
  moveUp: 'Move up',
  moveDown: 'Move down',
  addAbove: 'Add a line above',
  addBelow: 'Add a line below',
  addNote: 'Add a note',
  changeNote: 'Change the note',
  setGrams: 'Set the grams',
  setShare: 'Set its share of the whole dough',
  markBase: 'Mark as base',
  unmarkBase: 'No longer mark as base',
  changeStarter: 'Change to another starter, dough unchanged…',
  define: 'Define in the larder…',
  copy: 'Copy',
  paste: 'Paste',
  remove: 'Remove',
  rename: 'Rename',
  moveEarlier: 'Move earlier',
  moveLater: 'Move later',
  ferments: 'Ferments',
  doesNotFerment: 'Does not ferment',
  linesDecide: 'Let its lines decide whether it ferments',
  inGrams: 'Write this stage in grams',
  inPercentages: 'Write this stage in percentages',
  goToMethod: 'Go to its method',
  addMethod: 'Add a method',
  keepAsBuild: 'Keep as a build for other formulas',
  letBuildGo: 'Make it this formula’s own',
  addStageBefore: 'Add a stage before',
  removeStage: 'Remove stage',
} as const

export const menuName = (row: string): string => `Actions for ${row}`
export const startersName = (ingredient: string): string => `Another starter for ${ingredient}`
export const releaseLabel = (hold: Hold, ingredient: string): string =>
  `Release ${holdWords(hold, ingredient)}`
export const askLabel = (figure: string): string => `How is ${figure} worked out?`
export const askStageLabel = (stage: string): string => `How is the weight of ${stage} worked out?`
