import { type Sentences, type Worded, wording } from '../../engine/index.js'

/** Why an edit cannot be. */
export type EditDiagnostic =
  | { readonly code: 'formulaGone' | 'stageGone' | 'lineGone' }
  | { readonly code: 'formulaWithoutName' | 'stageWithoutName' }
  | { readonly code: 'stageNameTaken'; readonly name: string }
  | { readonly code: 'stageOfItself'; readonly path: readonly string[] } // each would take the next, the last is the first
  | { readonly code: 'flourWeightNotAboveZero' | 'holdBelowZero' }
  | { readonly code: 'giverNotInFinalDough' }
  | { readonly code: 'notAShare'; readonly typed: string }

export const editSentences: Sentences<EditDiagnostic> = {
  formulaGone: 'That formula is no longer on the shelf.',
  stageGone: 'That stage is no longer in the formula.',
  lineGone: 'That line is no longer in the formula.',
  formulaWithoutName: 'A formula needs a name.',
  stageWithoutName: 'A stage needs a name, so that other stages can take it.',
  stageNameTaken: ({ name }) => `There is a stage called ${name} already.`,
  stageOfItself: ({ path: [first, ...taken] }) =>
    `${first} would take ${taken.join(', which takes ')}. A stage cannot be made of itself.`,
  flourWeightNotAboveZero: 'The flour weight is a number of grams above 0.',
  holdBelowZero: 'A reading is held at a number that is not below 0.',
  giverNotInFinalDough: 'Only a line of the final dough can give.',
  notAShare: ({ typed }) =>
    `"${typed}" is not a share of the whole dough: write a percentage of all flour, such as 78.`,
}

const editProblem = wording(editSentences)

/** Thrown for an edit that cannot be: why, by code and figures; the message is a sentence for the baker. Nothing has changed. */
export class Refusal extends Error {
  constructor(readonly problem: Worded) {
    super(problem.message)
  }
}

export function refuse(diagnostic: EditDiagnostic): never {
  throw new Refusal(editProblem(diagnostic))
}

/** What each edit is called when it is told and when it is undone. */
export const labels = {
  rename: (name: string, to: string) => `Rename ${name} to ${to}`,
  renameWorkbook: 'Rename the workbook',
  note: (of: string) => `Note on ${of}`,
  confirm: (of: string) => `Confirm ${of}`,
  flourWeight: (weight: number) => `Flour weight ${weight} g`,
  add: (name: string) => `Add ${name}`,
  addLine: (name: string) => `Add ${name || 'a line'}`,
  /** `steps`: those that added a line which they do not any more; '' for one without a name. */
  noLongerAdded: (done: string, steps: readonly string[]) =>
    steps.length ? `${done}; no longer added at ${steps.map(does => does || 'a step').join(', ')}` : done,
  moveStage: (name: string, by: -1 | 1) => `Move ${name} ${by < 0 ? 'earlier' : 'later'}`,
  moveLine: (name: string, by: -1 | 1) => `Move ${name} ${by < 0 ? 'up' : 'down'}`,
  /** `released`: the hold in words that is let go with it. */
  amount: (name: string, amount: string, released = '') =>
    `${amount ? `Set ${name} to ${amount}` : `Clear ${name}`}${released ? `; release ${released}` : ''}`,
  clearShare: (name: string) => `Clear the share of ${name}`,
  ingredient: (from: string, to: string) => `Change ${from} to ${to || 'no ingredient'}`,
  hold: (words: string) => `Hold ${words}`,
  release: (words: string) => `Release ${words}`,
} as const
