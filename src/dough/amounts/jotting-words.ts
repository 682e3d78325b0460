import { type Sentences, wording } from '../../engine/index.js'

/** Why a jotting cannot be called so. */
export type JottingDiagnostic =
  | { readonly code: 'jottingWithoutName' }
  | { readonly code: 'jottingNameTaken'; readonly name: string; readonly by: 'jotting' | 'Tarebook' | 'unit' }
  | { readonly code: 'jottingNamedLike'; readonly name: string; readonly what: 'ingredient' | 'stage' }

export const jottingSentences: Sentences<JottingDiagnostic> = {
  jottingWithoutName: () => 'A jotting needs a name, such as per_loaf.',
  jottingNameTaken: ({ name, by }) =>
    by === 'jotting'
      ? `There is a jotting called ${name} already.`
      : by === 'unit'
        ? `${name} is a unit; choose another name.`
        : `${name} is a name of Tarebook's own; choose another.`,
  jottingNamedLike: ({ name, what }) =>
    `${name} is ${what === 'stage' ? 'a stage' : 'an ingredient'} of this formula; choose another name.`,
}

/** Why a jotting cannot be called so, with the sentence. */
export const jottingProblem = wording(jottingSentences)
