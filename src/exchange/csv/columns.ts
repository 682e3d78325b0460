/** The columns of a formula file, in the order they are written. */
export const columns = [
  'formula',
  'stage',
  'ingredient',
  'amount',
  'note',
  'counts as',
  'setting',
  'grams',
  'percent',
  'whole dough percent',
  'batch grams',
] as const

export type Column = (typeof columns)[number]

/** A heading's column: in any case, with spaces, hyphens or underscores between its words. */
export function columnOf(heading: string): Column | undefined {
  const key = heading
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
  return columns.find(column => column === key)
}

/** Settings of a stage and of the formula that this version knows, used here or kept for those who use them. */
export const stageSettings = ['ferments', 'base', 'keep-back', 'loss', 'build', 'step'] as const
const formulaSettings = ['note', 'group', 'flour weight', 'make', 'loss', 'bake loss'] as const
export const isHoldSetting = (key: string): boolean => /^hold \S/.test(key)
export const isJottingSetting = (key: string): boolean => /^jotting \S/.test(key)
export const isFormulaSetting = (key: string): boolean =>
  (formulaSettings as readonly string[]).includes(key) || isHoldSetting(key) || isJottingSetting(key)
export const isStageSetting = (key: string): boolean => (stageSettings as readonly string[]).includes(key)

/** Names for what a file leaves without one. */
export const unnamed = {
  formula: 'Untitled formula',
  stage: 'Final dough',
  ingredient: 'Unnamed ingredient',
  setting: 'Unnamed setting',
} as const
