import { type Sentences, wording } from '../../../engine/index.js'
import type { Batch, KeepBack, Scale } from '../../document/batch.js'
import { batchWords } from '../../document/batch-words.js'
import { grams, per100 } from '../../document/words.js'
import { Refusal } from '../words.js'

/** Why an edit that is fetched cannot be. */
export type FetchedEditDiagnostic =
  | { readonly code: 'stepGone' | 'stateGone' | 'stateWithoutName' | 'lastStage' | 'keepBackNegative' }
  | { readonly code: 'noSuchGiver'; readonly ingredient: string; readonly stage: string }
  | { readonly code: 'tooManyRenamed' }

export const fetchedEditSentences: Sentences<FetchedEditDiagnostic> = {
  stepGone: 'That step is no longer in the method.',
  stateGone: 'That state is no longer kept.',
  stateWithoutName: 'A state needs a name, such as “before the new flour”.',
  lastStage: 'A formula keeps at least its final dough.',
  keepBackNegative: 'What is kept back is a number of grams, 0 or more.',
  noSuchGiver: ({ ingredient, stage }) => `There is no ${ingredient} in ${stage} that could give.`,
  tooManyRenamed: 'Too many names that amounts speak of would change at once: do it in several parts.',
}

const fetchedEditProblem = wording(fetchedEditSentences)

export function refuseFetched(diagnostic: FetchedEditDiagnostic): never {
  throw new Refusal(fetchedEditProblem(diagnostic))
}

const counted = (what: string | number): string => (typeof what === 'number' ? `${what} formulas` : what)

/** What the edits are called that a page fetches when it first makes one. */
export const fetchedLabels = {
  remove: (name: string) => `Remove ${name}`,
  removeLines: (count: number) => `Remove ${count} lines`,
  ferments: (stage: string, ferments: boolean | undefined) =>
    ferments === undefined
      ? `Let ${stage} decide whether it ferments`
      : `${stage} ${ferments ? 'ferments' : 'does not ferment'}`,
  base: (name: string, isBase: boolean) => (isBase ? `Make ${name} the base` : `Unmark ${name} as base`),
  addFormula: (name: string) => `Add ${name}`,
  addFormulas: (count: number) => `Add ${count} formulas`,
  replaceFormula: (name: string) => `Replace ${name}`,
  duplicateFormula: (name: string) => `Duplicate ${name}`,
  deleteFormula: (name: string) => `Delete ${name}`,
  deleteFormulas: (count: number) => `Delete ${count} formulas`,
  /** Of a formula by its name, or of so many. */
  group: (what: string | number, group: string) => `Put ${counted(what)} into ${group}`,
  ungroup: (what: string | number) =>
    `Take ${counted(what)} out of ${typeof what === 'number' ? 'their groups' : 'its group'}`,
  batch: (batch: Batch) => `Make ${batchWords(batch)}`,
  scale: ({ step, fineStep, fineBelow }: Scale) => {
    const fine = fineBelow > 0 ? `, ${grams(fineStep)} below ${grams(fineBelow)}` : ''
    return `The scale weighs in steps of ${grams(step)}${fine}`
  },
  defineIngredient: (name: string) => `Larder: ${name}`,
  forgetIngredient: (name = 'ingredient') => `Larder: remove ${name}`,
  keepBack: (keepBack: KeepBack, stage: string) =>
    `Keep back ${keepBack === 'seed' ? 'as much as the seed' : grams(keepBack)} of ${stage}`,
  addStep: (does: string, stage: string) => `Add ${does || 'a step'} to the method of ${stage}`,
  changeStep: (does: string) => `Change ${does || 'a step'}`,
  moveStep: (does: string, by: number) => `Move ${does || 'a step'} ${by < 0 ? 'up' : 'down'}`,
  removeStep: (does: string) => `Remove ${does || 'a step'}`,
  stageLoss: (stage: string, loss: number) => `${stage}: ${per100(loss)} lost`,
  jotDown: (name: string) => `Jot down ${name}`,
  changeJotting: (name: string) => `Change ${name}`,
  keepState: (name: string) => `Keep this state as ${name}`,
  bringBack: (name: string) => `Bring back ${name}`,
  forgetState: (name: string) => `Let go of ${name}`,
} as const
