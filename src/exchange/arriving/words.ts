import { type Sentences, wording } from '../../engine/index.js'

/** Why something that arrives is not read, or how. */
export type ArrivingDiagnostic =
  | { readonly code: 'longerThanRecipe' | 'officeFile' | 'notATextFile' | 'readAsWestern' }
  | { readonly code: 'notRead'; readonly sentence: string } // as the reader said it

export const arrivingSentences: Sentences<ArrivingDiagnostic> = {
  longerThanRecipe: () =>
    'That is longer than any recipe, and it is not a table either. Bring in the part that holds the recipe.',
  officeFile: () =>
    'This is a file of an office program, not a text. Open it there, save the sheet as CSV, and bring that in.',
  notATextFile: () => 'This is not a text file. Choose a CSV file: a table of formulas saved as text.',
  readAsWestern: () =>
    'The file is not in UTF-8; it was read as Western (Windows-1252). Look at names with accents before you add it.',
  notRead: ({ sentence }) => sentence,
}

/** A diagnostic of this room with its sentence. */
export const arrivingProblem = wording(arrivingSentences)
